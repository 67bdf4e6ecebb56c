using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GameNight.Nights.Storage.Configurations;

internal sealed class MessageConfiguration : IEntityTypeConfiguration<Message>
{
    public void Configure(EntityTypeBuilder<Message> builder)
    {
        builder.ToTable("messages");
        builder.HasKey(message => new { message.GroupId, message.Id });

        // The wall behind "once": nothing is told twice, whoever queues it.
        builder.HasIndex(message => new { message.GroupId, message.NightId, message.GuestId, message.Kind, message.About }).IsUnique();
        builder.HasOne<Invitation>().WithMany()
            .HasForeignKey(message => new { message.GroupId, message.NightId, message.GuestId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class WorkReminderConfiguration : IEntityTypeConfiguration<WorkReminder>
{
    public void Configure(EntityTypeBuilder<WorkReminder> builder)
    {
        builder.ToTable("work_reminders");
        builder.HasKey(reminder => new { reminder.GroupId, reminder.Id });

        // The wall behind "once".
        builder.HasIndex(reminder => new { reminder.GroupId, reminder.NightId, reminder.HostId, reminder.Begins }).IsUnique();
        builder.HasOne<Night>().WithMany()
            .HasForeignKey(reminder => new { reminder.GroupId, reminder.NightId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<GroupMembership>().WithMany()
            .HasForeignKey(reminder => new { reminder.GroupId, reminder.HostId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class PostRowConfiguration : IEntityTypeConfiguration<PostRow>
{
    public void Configure(EntityTypeBuilder<PostRow> builder)
    {
        builder.ToTable("post_queue");
        builder.HasKey(row => new { row.GroupId, row.Subject });
        builder.HasIndex(row => row.DueAt);
    }
}
