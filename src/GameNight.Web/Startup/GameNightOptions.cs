using System.Globalization;
using System.Net;
using GameNight.LocalPostgres;
using GameNight.Planning;
using GameNight.Web.Mail;

namespace GameNight.Web.Startup;

/// <summary>What an installation can set, by <c>GAMENIGHT_…</c> in the environment or by arguments.</summary>
public sealed class GameNightOptions
{
    public const string Prefix = "GAMENIGHT_";
    public const string DefaultUrls = "http://localhost:5080";

    /// <summary>Connection string of the serving role; empty starts the private Postgres.</summary>
    [ConfigurationKeyName("database")]
    public string Database { get; init; } = "";

    /// <summary>File that holds the password of the serving role, so that it need not stand in the environment.</summary>
    [ConfigurationKeyName("database_password_file")]
    public string DatabasePasswordFile { get; init; } = "";

    /// <summary>Folder for keys, the link secret and the private database.</summary>
    [ConfigurationKeyName("data")]
    public string Data { get; init; } = "";

    /// <summary>Address under which guests reach the app, such as https://night.example; empty: as the host opened it.</summary>
    [ConfigurationKeyName("public_address")]
    public string PublicAddress { get; init; } = "";

    /// <summary>Mail server that takes messages to guests; empty: hosts pass them on by hand.</summary>
    [ConfigurationKeyName("smtp_host")]
    public string SmtpHost { get; init; } = "";

    /// <summary>Empty: the usual one for <see cref="SmtpTls"/>.</summary>
    [ConfigurationKeyName("smtp_port")]
    public string SmtpPort { get; init; } = "";

    /// <summary>How the connection is encrypted: on-connect, start, or none on this machine.</summary>
    [ConfigurationKeyName("smtp_tls")]
    public string SmtpTls { get; init; } = "on-connect";

    /// <summary>Empty where the server asks for no sign-in.</summary>
    [ConfigurationKeyName("smtp_user")]
    public string SmtpUser { get; init; } = "";

    /// <summary>File that holds the password of <see cref="SmtpUser"/>.</summary>
    [ConfigurationKeyName("smtp_password_file")]
    public string SmtpPasswordFile { get; init; } = "";

    /// <summary>Address that mails come from.</summary>
    [ConfigurationKeyName("smtp_from")]
    public string SmtpFrom { get; init; } = "";

    /// <summary>Proxies whose word about the caller is taken, see <see cref="Startup.TrustedProxies"/>; empty: nobody's.</summary>
    [ConfigurationKeyName("trusted_proxies")]
    public string TrustedProxies { get; init; } = "";

    /// <summary>How the log is written: plain or json.</summary>
    [ConfigurationKeyName("log")]
    public string Log { get; init; } = "plain";

    /// <summary>An address to listen on besides this machine, such as 0.0.0.0 for the home network.</summary>
    [ConfigurationKeyName("address")]
    public string Address { get; init; } = "";

    /// <summary>Solver effort of each plan in slices, as it was given; empty: the usual.</summary>
    [ConfigurationKeyName("solver_slices")]
    public string Slices { get; init; } = "";

    /// <summary>Folder of the reference tables; empty: those that came with the app.</summary>
    [ConfigurationKeyName("reference")]
    public string Reference { get; init; } = "";

    /// <summary>Solver effort of each plan, in slices; -1 when what was given is no number.</summary>
    public int SolverSlices => Slices.Length == 0 ? Effort.Usual.Slices
        : int.TryParse(Slices, NumberStyles.None, CultureInfo.InvariantCulture, out var slices) ? slices
        : -1;

    public bool LogsJson => Log == "json";

    public string DataRoot => Data.Length > 0 ? Path.GetFullPath(Data) : new PrivatePostgresSettings().DataRoot;

    public string ReferenceFolder => Reference.Length > 0
        ? Path.GetFullPath(Reference)
        : Path.Combine(AppContext.BaseDirectory, "shared", "reference");

    public bool IsHttps => PublicAddress.StartsWith("https://", StringComparison.OrdinalIgnoreCase);

    /// <summary>The strict name prefix is only valid over https; over plain http browsers would refuse the cookie.</summary>
    public string CookieName(string name) => IsHttps ? $"__Host-{name}" : name;

    public static GameNightOptions Read(string[] args)
    {
        // A builder of its own: unprefixed variables of the machine must not be taken for settings.
        var configuration = new ConfigurationBuilder().AddEnvironmentVariables(Prefix).AddCommandLine(args).Build();
        return configuration.Get<GameNightOptions>() ?? new GameNightOptions();
    }

    /// <summary>One sentence for each setting that cannot be used; each names the key to fix.</summary>
    public IReadOnlyList<string> Problems()
    {
        var problems = new List<string>();
        if (PublicAddress.Length > 0)
        {
            if (!(Uri.TryCreate(PublicAddress, UriKind.Absolute, out var address) && address.Scheme is "http" or "https"))
            {
                problems.Add($"{Prefix}PUBLIC_ADDRESS is not an address such as https://night.example.");
            }
            else if (!OpenWays.Allow(address))
            {
                problems.Add($"{Prefix}PUBLIC_ADDRESS is not encrypted: on the way, anybody could read private links and passwords. Use https.");
            }
        }

        if (Address.Length > 0 && Address is not ("localhost" or "*") && !IPAddress.TryParse(Address, out _))
        {
            problems.Add($"{Prefix}ADDRESS (--address) is {Address}; it can be an address of this machine such as 0.0.0.0. Another port: ASPNETCORE_URLS.");
        }

        if (Database.Length > 0 && ServingConnection.Problem(this) is { } problem)
        {
            problems.Add(problem);
        }

        problems.AddRange(MailSettings.Problems(this));
        if (Startup.TrustedProxies.Parse(TrustedProxies) is null)
        {
            problems.Add($"{Prefix}TRUSTED_PROXIES is {TrustedProxies}; it can be addresses and networks such as 10.0.0.5, 172.18.0.0/16.");
        }

        if (Environment.GetEnvironmentVariable("ASPNETCORE_FORWARDEDHEADERS_ENABLED") is "true" or "1")
        {
            problems.Add($"ASPNETCORE_FORWARDEDHEADERS_ENABLED takes anybody's word about the caller: name the proxies in {Prefix}TRUSTED_PROXIES instead.");
        }

        if (Log is not ("plain" or "json"))
        {
            problems.Add($"{Prefix}LOG is {Log}; it can be plain or json.");
        }

        if (SolverSlices is < 0 or > Effort.MostSlices)
        {
            problems.Add($"{Prefix}SOLVER_SLICES is {Slices}; it can be 0 to {Effort.MostSlices}.");
        }

        if (!Directory.Exists(ReferenceFolder))
        {
            problems.Add($"{Prefix}REFERENCE: the folder {ReferenceFolder} is not there.");
        }

        return problems;
    }
}
