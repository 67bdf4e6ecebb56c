using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using GameNight.Nights.Records;

namespace GameNight.Nights.Links;

/// <summary>The secret part of a private link: 43 characters. Never stored; the database keeps its SHA-256.</summary>
public readonly record struct LinkToken
{
    public const int Length = 43;

    private LinkToken(string text)
    {
        Text = text;
    }

    public string Text { get; }

    /// <returns>Null when the text cannot be a token of ours.</returns>
    public static LinkToken? TryParse(string? text) =>
        text is { Length: Length } && text.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_')
            ? new LinkToken(text)
            : null;

    internal static LinkToken From(ReadOnlySpan<byte> mac) => new(Base64Url.EncodeToString(mac));

    internal byte[] Hash() => SHA256.HashData(Encoding.ASCII.GetBytes(Text));

    /// <summary>Tokens do not leak into logs by being printed.</summary>
    public override string ToString() => "(link)";
}

/// <summary>
/// Makes tokens from a secret that is kept outside the database, so that a link can be shown again without being stored.
/// </summary>
public sealed class LinkSecret
{
    public const int FewestBytes = 32;

    private readonly byte[] _key;

    /// <exception cref="ArgumentException">The secret is shorter than 32 bytes.</exception>
    public LinkSecret(byte[] key)
    {
        if (key.Length < FewestBytes)
        {
            throw new ArgumentException($"The link secret needs at least {FewestBytes} bytes.", nameof(key));
        }

        _key = key;
    }

    internal LinkToken Token(LinkScope scope, GroupId group, NightId? night, Guid subject, int generation)
    {
        var holder = $"{scope}|{group}|{night}|{subject:N}|{generation}";
        return LinkToken.From(HMACSHA256.HashData(_key, Encoding.UTF8.GetBytes(holder)));
    }
}
