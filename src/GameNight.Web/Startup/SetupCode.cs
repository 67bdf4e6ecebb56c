using System.Security.Cryptography;
using System.Text;

namespace GameNight.Web.Startup;

/// <summary>
/// The one-time code that lets whoever started the app make the first account. Printed at start while there is no
/// account, made anew at every start, useless once an account exists.
/// </summary>
public sealed class SetupCode
{
    /// <summary>Without letters and digits that are easily confused.</summary>
    private const string Alphabet = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";

    public string Text { get; } = RandomNumberGenerator.GetString(Alphabet, 4) + "-"
        + RandomNumberGenerator.GetString(Alphabet, 4) + "-" + RandomNumberGenerator.GetString(Alphabet, 4);

    public bool IsMatchedBy(string? entered) => CryptographicOperations.FixedTimeEquals(
        Encoding.UTF8.GetBytes(Plain(Text)), Encoding.UTF8.GetBytes(Plain(entered ?? "")));

    private static string Plain(string text) => text.Replace("-", "", StringComparison.Ordinal).Trim().ToUpperInvariant();
}
