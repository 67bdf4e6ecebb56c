using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace GameNight.Nights.Storage;

/// <summary>Lets the migration tool see the model. It never connects.</summary>
internal sealed class DesignTime : IDesignTimeDbContextFactory<GameNightDb>
{
    public GameNightDb CreateDbContext(string[] args) => new(
        new DbContextOptionsBuilder<GameNightDb>().UseGameNightPostgres("Host=nowhere").Options);
}

internal static class GameNightPostgres
{
    /// <summary>SQL floor: Postgres 15.</summary>
    private static readonly Version Floor = new(15, 0);

    /// <summary>A schema of its own, which the serving role may only read.</summary>
    private const string HistorySchema = "migrations";

    public static DbContextOptionsBuilder<TContext> UseGameNightPostgres<TContext>(
        this DbContextOptionsBuilder<TContext> options, string connectionString)
        where TContext : DbContext
    {
        UseGameNightPostgres((DbContextOptionsBuilder)options, connectionString);
        return options;
    }

    public static DbContextOptionsBuilder UseGameNightPostgres(
        this DbContextOptionsBuilder options, string connectionString) => options.UseNpgsql(
            connectionString,
            postgres => postgres
                .UseNodaTime()
                .SetPostgresVersion(Floor)
                .MigrationsHistoryTable("migration_history", HistorySchema)
                .ExecutionStrategy(dependencies => new OneTry(dependencies)));
}
