namespace GameNight.Nights.Storage;

/// <summary>
/// SQL of the second wall: a transaction sees and writes rows of its own group only, and none at all without a group. It
/// holds for the owner of the tables too; a data migration must switch it off deliberately.
/// </summary>
internal static class RowLevelSecurity
{
    private const string OwnGroup = "nullif(current_setting('app.group_id', true), '')::uuid";
    private const string OwnHost = "nullif(current_setting('app.host_id', true), '')::uuid";

    /// <summary>Tables without a group: they hold no group's content.</summary>
    public static IReadOnlyList<string> GlobalTables { get; } =
    [
        "accounts", "account_claims", "account_logins", "account_tokens", "account_passkeys", "recovery_codes",
        "link_directory", "replan_queue", "post_queue",
    ];

    public static string ForGroupTable(string table) => Policy(table, $"group_id = {OwnGroup}");

    public static string ForGroups() => Policy("groups", $"id = {OwnGroup}");

    /// <summary>A host also sees their own memberships before any group is entered, but cannot write them then.</summary>
    public static string ForMemberships() =>
        Policy("memberships", $"group_id = {OwnGroup}")
        + $"create policy own_host on memberships for select using (host_id = {OwnHost});\n";

    private static string Policy(string table, string rule) =>
        $"""
         alter table {table} enable row level security;
         alter table {table} force row level security;
         create policy own_group on {table} using ({rule}) with check ({rule});

         """;
}
