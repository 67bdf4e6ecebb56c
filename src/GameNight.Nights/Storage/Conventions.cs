using System.Text;
using System.Text.Json;
using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace GameNight.Nights.Storage;

/// <summary>How ids, enumerations and documents become columns, said once.</summary>
internal static class Conventions
{
    /// <summary>The system column in which Postgres keeps the transaction that last wrote a row.</summary>
    private const string RowVersion = "xmin";

    public static void Apply(ModelConfigurationBuilder configuration)
    {
        Id<GroupId>(configuration);
        Id<HostId>(configuration);
        Id<NightId>(configuration);
        Id<GuestId>(configuration);
        Id<FormulaId>(configuration);
        Id<MenuItemId>(configuration);
        Id<MessageId>(configuration);
        Id<WorkReminderId>(configuration);
        Id<HostInvitationId>(configuration);
        Id<DateChoiceId>(configuration);
        Id<AskedGuestId>(configuration);
        configuration.Properties<Enum>().HaveConversion<string>().HaveMaxLength(32);
    }

    /// <summary>Tables are named by the configurations; columns, keys and indexes follow in snake case.</summary>
    public static void SnakeCase(ModelBuilder model)
    {
        foreach (var entity in model.Model.GetEntityTypes().Where(entity => !entity.IsMappedToJson()))
        {
            foreach (var property in entity.GetProperties().Where(property => property.GetColumnName() != RowVersion))
            {
                property.SetColumnName(Snake(property.Name));
            }
        }
    }

    /// <summary>A property kept as one <c>jsonb</c> document.</summary>
    public static PropertyBuilder<T> IsDocument<T>(this PropertyBuilder<T> property) => property
        .HasColumnType("jsonb")
        .HasConversion(
            new ValueConverter<T, string>(value => Write(value), text => Read<T>(text)),
            new ValueComparer<T>(
                (left, right) => Write(left) == Write(right),
                value => Write(value).GetHashCode(StringComparison.Ordinal),
                value => Read<T>(Write(value))));

    /// <summary>Postgres counts row versions by itself; the record shows it as <c>Version</c>.</summary>
    public static void IsRowVersioned<T>(this EntityTypeBuilder<T> entity)
        where T : class => entity.Property<uint>("Version").HasColumnName(RowVersion).IsRowVersion();

    private static string Write<T>(T value) => JsonSerializer.Serialize(value, StoredJson.Options);

    private static T Read<T>(string text) => JsonSerializer.Deserialize<T>(text, StoredJson.Options)!;

    private static void Id<T>(ModelConfigurationBuilder configuration)
        where T : struct, IRecordId<T> =>
        configuration.Properties<T>().HaveConversion<IdConverter<T>>();

    private static string Snake(string name)
    {
        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0)
            {
                text.Append('_');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }

    private sealed class IdConverter<T>() : ValueConverter<T, Guid>(id => id.Value, value => Make<T>(value))
        where T : struct, IRecordId<T>;

    // An expression tree may not call a static abstract member itself.
    private static T Make<T>(Guid value)
        where T : struct, IRecordId<T> => T.From(value);
}
