namespace GameNight.Web.SignIn;

/// <summary>What happens to accounts, for whoever runs the app: ids only, never names, addresses, passwords or codes.</summary>
internal sealed partial class SecurityLog(ILogger<SecurityLog> log)
{
    private readonly ILogger _log = log;

    [LoggerMessage(1, LogLevel.Information, "Account {Account} signed in by {Way}.")]
    public partial void SignedIn(Guid account, WayIn way);

    [LoggerMessage(2, LogLevel.Warning, "A sign-in by {Way} was refused (account {Account}).")]
    public partial void Refused(WayIn way, Guid? account);

    [LoggerMessage(3, LogLevel.Warning, "Account {Account} is locked for a while after too many wrong passwords.")]
    public partial void LockedOut(Guid account);

    [LoggerMessage(4, LogLevel.Warning, "Account {Account} used up a recovery code.")]
    public partial void CodeUsed(Guid account);

    [LoggerMessage(5, LogLevel.Information, "Account {Account} made new recovery codes.")]
    public partial void CodesRenewed(Guid account);

    [LoggerMessage(6, LogLevel.Information, "Account {Account} added a passkey.")]
    public partial void PasskeyAdded(Guid account);

    [LoggerMessage(7, LogLevel.Information, "Account {Account} removed a passkey.")]
    public partial void PasskeyRemoved(Guid account);

    [LoggerMessage(8, LogLevel.Information, "Account {Account} changed its password.")]
    public partial void PasswordChanged(Guid account);

    [LoggerMessage(9, LogLevel.Information, "Account {Account} changed its e-mail.")]
    public partial void EmailChanged(Guid account);

    [LoggerMessage(10, LogLevel.Information, "Account {Account} signed out everywhere.")]
    public partial void SignedOutEverywhere(Guid account);

    [LoggerMessage(11, LogLevel.Information, "Account {Account} was removed.")]
    public partial void AccountRemoved(Guid account);
}

/// <summary>With what somebody shows that an account is theirs.</summary>
internal enum WayIn
{
    Password,
    Passkey,
    RecoveryCode,
}
