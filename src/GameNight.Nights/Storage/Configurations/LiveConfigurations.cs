using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GameNight.Nights.Storage.Configurations;

internal sealed class LiveTapConfiguration : IEntityTypeConfiguration<LiveTap>
{
    public void Configure(EntityTypeBuilder<LiveTap> builder)
    {
        builder.ToTable("live_taps");
        builder.HasKey(tap => new { tap.GroupId, tap.NightId, tap.Id });
        builder.Property(tap => tap.Mark).IsDocument();
        builder.HasOne<Night>().WithMany().HasForeignKey(tap => new { tap.GroupId, tap.NightId }).OnDelete(DeleteBehavior.Cascade);
    }
}
