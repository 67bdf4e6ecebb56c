using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;

namespace GameNight.Nights.ForGuests;

/// <summary>Private notes at rest: encrypted with keys that are kept outside the database.</summary>
internal sealed class GuestNotes(IDataProtectionProvider protection)
{
    private readonly IDataProtector _protector = protection.CreateProtector("guest-note");

    public string Protect(string note) => _protector.Protect(note);

    /// <returns>The note, or null with <c>false</c> when its key is gone.</returns>
    public (string? Note, bool IsReadable) Read(string? protectedNote)
    {
        if (protectedNote is null)
        {
            return (null, true);
        }

        try
        {
            return (_protector.Unprotect(protectedNote), true);
        }
        catch (CryptographicException)
        {
            return (null, false);
        }
    }
}
