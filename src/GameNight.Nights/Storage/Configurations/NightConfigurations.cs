using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GameNight.Nights.Storage.Configurations;

internal sealed class NightConfiguration : IEntityTypeConfiguration<Night>
{
    public void Configure(EntityTypeBuilder<Night> builder)
    {
        builder.ToTable("nights");
        builder.HasKey(night => new { night.GroupId, night.Id });
        builder.Property(night => night.Facts).IsDocument();
        builder.Property(night => night.Overrides).IsDocument();
        builder.Property(night => night.Moves).IsDocument().HasDefaultValueSql("'[]'");
        builder.Property(night => night.Readings).IsDocument().HasDefaultValueSql("'[]'");
        builder.IsRowVersioned();
        builder.HasOne<Group>().WithMany().HasForeignKey(night => night.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class InvitationConfiguration : IEntityTypeConfiguration<Invitation>
{
    public void Configure(EntityTypeBuilder<Invitation> builder)
    {
        builder.ToTable("invitations");
        builder.HasKey(invitation => new { invitation.GroupId, invitation.NightId, invitation.GuestId });
        builder.HasOne<Night>().WithMany()
            .HasForeignKey(invitation => new { invitation.GroupId, invitation.NightId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Guest>().WithMany()
            .HasForeignKey(invitation => new { invitation.GroupId, invitation.GuestId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class AnswerConfiguration : IEntityTypeConfiguration<Answer>
{
    public void Configure(EntityTypeBuilder<Answer> builder)
    {
        builder.ToTable("answers");
        builder.HasKey(answer => new { answer.GroupId, answer.NightId, answer.GuestId });
        builder.Property(answer => answer.Facts).IsDocument();
        builder.Property(answer => answer.EarlierKeys).IsDocument().HasDefaultValueSql("'[]'");
        builder.Property(answer => answer.Replaced).IsDocument();
        builder.Property(answer => answer.Revision).IsConcurrencyToken();
        builder.Ignore(answer => answer.Counted);
        builder.Ignore(answer => answer.IsWaiting);
        builder.HasOne<Invitation>().WithOne()
            .HasForeignKey<Answer>(answer => new { answer.GroupId, answer.NightId, answer.GuestId })
            .OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class DietaryNoteConfiguration : IEntityTypeConfiguration<DietaryNote>
{
    public void Configure(EntityTypeBuilder<DietaryNote> builder)
    {
        builder.ToTable("dietary_notes");
        builder.HasKey(note => new { note.GroupId, note.NightId, note.GuestId });
        builder.Property(note => note.Needs).IsDocument();
        builder.Property(note => note.Ruling).IsDocument();

        // Room for the longest note in four-byte characters, encrypted and in base 64.
        builder.Property(note => note.ProtectedNote).HasMaxLength(4000);
        builder.HasOne<Invitation>().WithOne()
            .HasForeignKey<DietaryNote>(note => new { note.GroupId, note.NightId, note.GuestId })
            .OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class SavedPlanConfiguration : IEntityTypeConfiguration<SavedPlan>
{
    public void Configure(EntityTypeBuilder<SavedPlan> builder)
    {
        builder.ToTable("plans");
        builder.HasKey(plan => new { plan.GroupId, plan.NightId });
        builder.Property(plan => plan.Fingerprint).HasMaxLength(64);
        builder.Property(plan => plan.EngineVersion).HasMaxLength(16);
        builder.Property(plan => plan.Document).HasColumnType("jsonb");
        builder.HasOne<Night>().WithOne()
            .HasForeignKey<SavedPlan>(plan => new { plan.GroupId, plan.NightId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class LinkRowConfiguration : IEntityTypeConfiguration<LinkRow>
{
    public void Configure(EntityTypeBuilder<LinkRow> builder)
    {
        builder.ToTable("link_directory");
        builder.HasKey(link => link.TokenHash);
        builder.Property(link => link.TokenHash).HasMaxLength(32);
        builder.HasIndex(link => new { link.GroupId, link.NightId, link.Subject });
    }
}

internal sealed class ReplanRowConfiguration : IEntityTypeConfiguration<ReplanRow>
{
    public void Configure(EntityTypeBuilder<ReplanRow> builder)
    {
        builder.ToTable("replan_queue");
        builder.HasKey(row => new { row.GroupId, row.NightId });
    }
}

internal sealed class CommittedDoughConfiguration : IEntityTypeConfiguration<CommittedDough>
{
    public void Configure(EntityTypeBuilder<CommittedDough> builder)
    {
        builder.ToTable("committed_doughs");
        builder.HasKey(dough => new { dough.GroupId, dough.NightId });
        builder.Property(dough => dough.Snapshot).HasColumnType("jsonb");
        builder.Property(dough => dough.Plan).HasColumnType("jsonb");
        builder.HasOne<Night>().WithOne()
            .HasForeignKey<CommittedDough>(dough => new { dough.GroupId, dough.NightId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class BakeLogConfiguration : IEntityTypeConfiguration<BakeLog>
{
    public void Configure(EntityTypeBuilder<BakeLog> builder)
    {
        builder.ToTable("bake_logs");
        builder.HasKey(log => new { log.GroupId, log.NightId });
        builder.Property(log => log.Facts).IsDocument();
        builder.IsRowVersioned();
        builder.HasOne<Night>().WithOne()
            .HasForeignKey<BakeLog>(log => new { log.GroupId, log.NightId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class LookBackConfiguration : IEntityTypeConfiguration<LookBack>
{
    public void Configure(EntityTypeBuilder<LookBack> builder)
    {
        builder.ToTable("look_backs");
        builder.HasKey(row => new { row.GroupId, row.NightId, row.GuestId });
        builder.Property(row => row.Facts).IsDocument();
        builder.Property(row => row.Revision).IsConcurrencyToken();
        builder.HasOne<Invitation>().WithOne()
            .HasForeignKey<LookBack>(row => new { row.GroupId, row.NightId, row.GuestId })
            .OnDelete(DeleteBehavior.Cascade);
    }
}
