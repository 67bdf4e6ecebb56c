namespace GameNight.TestKit.Postgres;

/// <summary>A database of its own for one class of tests, dropped with its <see cref="TestPostgres"/>.</summary>
/// <param name="Name">Unique on the server.</param>
/// <param name="OwnerConnectionString">The role that migrates.</param>
/// <param name="AppConnectionString">The role that serves.</param>
/// <param name="AdminConnectionString">The superuser, to look past row-level security.</param>
public sealed record TestDatabase(
    string Name, string OwnerConnectionString, string AppConnectionString, string AdminConnectionString);
