using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>What a message is about.</summary>
public enum MessageKind
{
    Invitation,

    /// <summary>To somebody who has not answered.</summary>
    Reminder,

    /// <summary>Another time or place.</summary>
    Change,

    Cancellation,

    /// <summary>A night that was called off takes place after all.</summary>
    Reinstatement,

    /// <summary>After the night, with the link to look back.</summary>
    Thanks,

    /// <summary>To somebody who waited for a seat: now there is one.</summary>
    Seat,
}

/// <summary>How far a message is.</summary>
public enum MessageState
{
    /// <summary>To be sent by mail.</summary>
    Waiting,

    /// <summary>The mail server has accepted it.</summary>
    Sent,

    /// <summary>It cannot be sent; a host is told why.</summary>
    GivenUp,

    /// <summary>There is no mail to this guest: a host passes the text on.</summary>
    ForHand,

    /// <summary>A host passed the text on.</summary>
    PassedOn,

    /// <summary>What it was to say no longer holds or is no longer needed.</summary>
    Dropped,
}

/// <summary>What stands in the way of a message.</summary>
public enum MessageFault
{
    /// <summary>The mail server refused this address.</summary>
    AddressRefused,

    /// <summary>The mail server refused what was sent.</summary>
    MessageRefused,

    /// <summary>The mail server could not be reached, or put us off.</summary>
    ServerAway,

    /// <summary>The mail server does not let us in: a setting is wrong.</summary>
    SenderRefused,

    /// <summary>Making or sending it failed in a way that nobody foresaw.</summary>
    Failed,
}

/// <summary>
/// Something to tell one guest about one night, kept once for each thing there is to tell. It holds no text and no address:
/// those are read when it is sent, so that what was erased or changed in between is not sent any more.
/// </summary>
public sealed class Message
{
    public Message(
        GroupId groupId, MessageId id, NightId nightId, GuestId guestId, MessageKind kind, int about, MessageState state,
        Instant queuedAt)
    {
        GroupId = groupId;
        Id = id;
        NightId = nightId;
        GuestId = guestId;
        Kind = kind;
        About = about;
        State = state;
        QueuedAt = queuedAt;
    }

    public GroupId GroupId { get; private set; }

    /// <summary>The mail's own id is made of it, so that a repeat can be told.</summary>
    public MessageId Id { get; private set; }

    public NightId NightId { get; private set; }
    public GuestId GuestId { get; private set; }
    public MessageKind Kind { get; private set; }

    /// <summary>
    /// Which of its kind it is: the generation of the link for an invitation, the first or second reminder, how often the
    /// night had moved for what tells of moves and calling off, the revision of the answer for a seat.
    /// </summary>
    public int About { get; private set; }

    public MessageState State { get; private set; }
    public Instant QueuedAt { get; private set; }

    /// <summary>When it was sent, given up, passed on or dropped.</summary>
    public Instant? SettledAt { get; private set; }

    /// <summary>How often sending was tried in vain.</summary>
    public int Tries { get; private set; }

    /// <summary>What came of the last try; null when nothing stood in the way.</summary>
    public MessageFault? Fault { get; private set; }

    /// <summary>How many moves of the night the guest knows of from it; null until it was sent or passed on.</summary>
    public int? KnewMoves { get; private set; }

    public void Settle(MessageState state, Instant at, MessageFault? fault = null)
    {
        State = state;
        SettledAt = at;
        Fault = fault;
    }

    public void PassOn(Instant at, int moves)
    {
        Settle(MessageState.PassedOn, at);
        KnewMoves = moves;
    }

    public void TriedInVain(MessageFault fault)
    {
        Tries++;
        Fault = fault;
    }

    /// <summary>To be sent after all, from the beginning.</summary>
    public void WaitAgain()
    {
        State = MessageState.Waiting;
        SettledAt = null;
        Tries = 0;
        Fault = null;
    }

    /// <summary>The guest takes no mail (any more): a host has to pass it on.</summary>
    public void LeaveToHand() => State = MessageState.ForHand;
}
