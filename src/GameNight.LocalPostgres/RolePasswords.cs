namespace GameNight.LocalPostgres;

/// <summary>Passwords of the two roles; null leaves a role's password as it is.</summary>
public sealed record RolePasswords(string? Owner, string? App)
{
    /// <summary>For a server that does not ask.</summary>
    public static RolePasswords None { get; } = new(null, null);
}
