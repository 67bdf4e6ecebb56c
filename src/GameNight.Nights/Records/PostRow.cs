using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>What there is to do.</summary>
public enum Errand
{
    /// <summary>Send a message.</summary>
    Message,

    /// <summary>Look whether a night is due for reminders or thanks.</summary>
    Night,

    /// <summary>Send a guest the link of a question for a date.</summary>
    Question,

    /// <summary>Tell a host that work begins soon.</summary>
    Work,
}

/// <summary>
/// Something to do for a group at a time. Written in the same commit as what it follows from, so a restart forgets nothing.
/// Global, so that the postman finds work across groups; ids and a time, nothing else.
/// </summary>
public sealed class PostRow
{
    public PostRow(GroupId groupId, Guid subject, Errand errand, Instant dueAt)
    {
        GroupId = groupId;
        Subject = subject;
        Errand = errand;
        DueAt = dueAt;
    }

    public GroupId GroupId { get; private set; }

    /// <summary>Id of the message, of the night, of the guest's place in the question, or of the reminder of work.</summary>
    public Guid Subject { get; private set; }

    public Errand Errand { get; private set; }
    public Instant DueAt { get; private set; }

    public void Postpone(Instant dueAt) => DueAt = dueAt;
}
