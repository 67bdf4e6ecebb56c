using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GameNight.Nights.Storage.Configurations;

internal sealed class DateChoiceConfiguration : IEntityTypeConfiguration<DateChoice>
{
    public void Configure(EntityTypeBuilder<DateChoice> builder)
    {
        builder.ToTable("date_choices");
        builder.HasKey(choice => new { choice.GroupId, choice.Id });
        builder.Property(choice => choice.Facts).IsDocument();
        builder.IsRowVersioned();
        builder.HasOne<Group>().WithMany().HasForeignKey(choice => choice.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class AskedGuestConfiguration : IEntityTypeConfiguration<AskedGuest>
{
    public void Configure(EntityTypeBuilder<AskedGuest> builder)
    {
        builder.ToTable("asked_guests");
        builder.HasKey(asked => new { asked.GroupId, asked.ChoiceId, asked.GuestId });
        builder.HasIndex(asked => new { asked.GroupId, asked.Id }).IsUnique();
        builder.Property(asked => asked.Answers).IsDocument();
        builder.Property(asked => asked.EarlierKeys).IsDocument().HasDefaultValueSql("'[]'");
        builder.Property(asked => asked.Replaced).IsDocument();
        builder.Property(asked => asked.Revision).IsConcurrencyToken();
        builder.HasOne<DateChoice>().WithMany()
            .HasForeignKey(asked => new { asked.GroupId, asked.ChoiceId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Guest>().WithMany()
            .HasForeignKey(asked => new { asked.GroupId, asked.GuestId }).OnDelete(DeleteBehavior.Cascade);
    }
}
