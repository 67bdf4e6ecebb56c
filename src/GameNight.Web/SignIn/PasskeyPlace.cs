using GameNight.Web.Startup;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>
/// Passkeys belong to one address, which is configured and never taken from the request. Browsers offer them over https and
/// on this machine.
/// </summary>
internal sealed class PasskeyPlace(GameNightOptions options)
{
    private const string ThisMachine = "localhost";

    private readonly Uri? _address = options.PublicAddress.Length > 0 ? new Uri(options.PublicAddress) : null;

    public string Domain => _address?.Host ?? ThisMachine;

    public bool WorksFor(HttpRequest request) =>
        string.Equals(request.Host.Host, Domain, StringComparison.OrdinalIgnoreCase)
        && (Domain == ThisMachine || (options.IsHttps && _address!.HostNameType == UriHostNameType.Dns));

    public void Apply(IdentityPasskeyOptions passkeys)
    {
        passkeys.ServerDomain = Domain;
        passkeys.UserVerificationRequirement = "required";
        passkeys.ResidentKeyRequirement = "required";
        passkeys.ValidateOrigin = context => ValueTask.FromResult(!context.CrossOrigin && IsOurs(context.Origin));
    }

    private bool IsOurs(string origin) => Uri.TryCreate(origin, UriKind.Absolute, out var from)
        && (_address is null
            ? from.Host == ThisMachine
            : from.GetLeftPart(UriPartial.Authority) == _address.GetLeftPart(UriPartial.Authority));
}
