using GameNight.Nights.Storage;

namespace GameNight.Nights.Tests.Storage;

/// <summary>Finds tables that would let one group's rows be seen or kept beside another's.</summary>
internal static class TableSafety
{
    private const string TablesWithWalls =
        """
        select concat_ws('|', c.relname, c.relkind, c.relrowsecurity, c.relforcerowsecurity,
            (select a.attname from pg_index i
                join pg_attribute a on a.attrelid = i.indrelid and a.attnum = i.indkey[0]
                where i.indrelid = c.oid and i.indisprimary),
            coalesce((select string_agg(
                case when pg_get_expr(p.polqual, p.polrelid) like '%' || k.own || '%app.group_id%' then 'group'
                    when p.polcmd = 'r' and pg_get_expr(p.polqual, p.polrelid) like '%host_id%app.host_id%' then 'host'
                    else 'open' end, ',')
                from pg_policy p where p.polrelid = c.oid), ''))
        from pg_class c, lateral (select case c.relname when 'groups' then 'id' else 'group_id' end as own) k
        where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p', 'v', 'm', 'f')
        order by c.relname
        """;

    private const string KeysThatCross =
        """
        select f.conname::text from pg_constraint f
        join pg_class c on c.oid = f.conrelid
        join pg_class parent on parent.oid = f.confrelid
        where f.contype = 'f' and c.relrowsecurity
          and ((select attname from pg_attribute where attrelid = f.conrelid and attnum = f.conkey[1]) <> 'group_id'
            or (select attname from pg_attribute where attrelid = f.confrelid and attnum = f.confkey[1])
                <> case parent.relname when 'groups' then 'id' else 'group_id' end)
        """;

    public static async Task<IReadOnlyList<string>> ProblemsAsync(string connectionString)
    {
        var problems = new List<string>();
        foreach (var row in await Rows.ReadAsync(connectionString, TablesWithWalls))
        {
            var fields = row.Split('|');
            var (table, kind, policies) = (fields[0], fields[1], fields[^1].Split(','));
            if (RowLevelSecurity.GlobalTables.Contains(table))
            {
                continue;
            }

            Report(kind is not ("r" or "p"), "is no table");
            Report(fields[2] != "t", "has no row-level security");
            Report(fields[3] != "t", "does not force it on its owner");
            Report(fields.Length < 6 || fields[4] != (table == "groups" ? "id" : "group_id"), "does not begin its key with the group");
            Report(!policies.Contains("group"), "has no policy of the group");
            Report(policies.Contains("open"), "has a policy that asks for no group");

            void Report(bool isSo, string what)
            {
                if (isSo)
                {
                    problems.Add($"{table} {what}");
                }
            }
        }

        problems.AddRange((await Rows.ReadAsync(connectionString, KeysThatCross)).Select(key => $"{key} may cross groups"));
        return problems;
    }
}
