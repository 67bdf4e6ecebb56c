using GameNight.Planning.Dates;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Nights.Records;

/// <summary>Where a question for a date stands.</summary>
public enum DateChoiceState
{
    Open,

    /// <summary>A date was chosen and its night is there.</summary>
    Chosen,

    /// <summary>The host asks no more; there is no night of it.</summary>
    Withdrawn,
}

/// <summary>What a host asks: which of these evenings. Local times of <paramref name="Zone"/>.</summary>
/// <param name="Options">When the first pie would be on the table; 1 to 40, each once.</param>
/// <param name="Quorum">So many people make a night, the host counted in.</param>
/// <param name="OpenUntil">Until then guests are asked to answer; later answers count as well while nothing is chosen.</param>
public sealed record DateChoiceFacts(
    string Title, string Zone, IReadOnlyList<LocalDateTime> Options, int Quorum, LocalDateTime OpenUntil)
{
    public const int MostOptions = 40;

    private static readonly LocalDateTimePattern Ids = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>An evening is its own id: moved, it is another one, and what was said of it no longer holds.</summary>
    public static string IdOf(LocalDateTime option) => Ids.Format(option);
}

/// <summary>A group is asked for a date.</summary>
public sealed class DateChoice
{
    public DateChoice(GroupId groupId, DateChoiceId id, DateChoiceFacts facts, HostId? by, Instant openedAt)
    {
        GroupId = groupId;
        Id = id;
        Facts = facts;
        By = by;
        OpenedAt = openedAt;
    }

    public GroupId GroupId { get; private set; }
    public DateChoiceId Id { get; private set; }
    public DateChoiceFacts Facts { get; private set; }

    /// <summary>The host who asks, and comes to any of the evenings.</summary>
    public HostId? By { get; private set; }

    public Instant OpenedAt { get; private set; }
    public DateChoiceState State { get; private set; }

    /// <summary>The evening that was chosen.</summary>
    public LocalDateTime? Chosen { get; private set; }

    /// <summary>The night that was made of it.</summary>
    public NightId? NightId { get; private set; }

    /// <summary>When it was chosen or withdrawn.</summary>
    public Instant? EndedAt { get; private set; }

    public uint Version { get; private set; }

    public void Set(DateChoiceFacts facts) => Facts = facts;

    public void Choose(LocalDateTime option, NightId night, Instant at)
    {
        (State, Chosen, NightId, EndedAt) = (DateChoiceState.Chosen, option, night, at);
    }

    public void Withdraw(Instant at) => (State, EndedAt) = (DateChoiceState.Withdrawn, at);
}

/// <summary>What was said of evenings before a page that did not know of it said otherwise: from another device, as a rule.</summary>
public sealed record ReplacedSaying(IReadOnlyDictionary<string, DateAnswer> Answers, Instant SentAt);

/// <summary>A guest who is asked for a date, with one private link and their answers.</summary>
public sealed class AskedGuest
{
    /// <summary>Keys of earlier forms that are remembered: phones on a weak connection send again for minutes, not for days.</summary>
    private const int MostEarlierKeys = 20;

    public AskedGuest(GroupId groupId, DateChoiceId choiceId, GuestId guestId, AskedGuestId id, bool isNeeded)
    {
        GroupId = groupId;
        ChoiceId = choiceId;
        GuestId = guestId;
        Id = id;
        IsNeeded = isNeeded;
    }

    public GroupId GroupId { get; private set; }
    public DateChoiceId ChoiceId { get; private set; }
    public GuestId GuestId { get; private set; }

    /// <summary>What the link is made for: one guest, one question.</summary>
    public AskedGuestId Id { get; private set; }

    public int LinkGeneration { get; private set; } = 1;

    /// <summary>Without them there is no night.</summary>
    public bool IsNeeded { get; private set; }

    /// <summary>By the evening's id; what is missing is not answered.</summary>
    public IReadOnlyDictionary<string, DateAnswer> Answers { get; private set; } = new Dictionary<string, DateAnswer>();

    /// <summary>Counts the answers given, from 1; 0 before the first.</summary>
    public int Revision { get; private set; }

    /// <summary>The key of the form that was sent last: sent twice, it counts once.</summary>
    public Guid LastKey { get; private set; }

    /// <summary>Keys of forms that were sent before the last: sent again, they count no second time.</summary>
    public IReadOnlyList<Guid> EarlierKeys { get; private set; } = [];

    /// <summary>Told to the guest on every device until they answer again knowing of it; null when nothing gave way.</summary>
    public ReplacedSaying? Replaced { get; private set; }

    public Instant? AnsweredAt { get; private set; }

    /// <summary>Came after the time that guests were asked to answer by.</summary>
    public bool IsLate { get; private set; }

    /// <summary>Somebody opened this link and said that it is not theirs.</summary>
    public Instant? DisownedAt { get; private set; }

    /// <summary>How far the mail with the present link is; null when none was asked for. The row is its own message: one a link.</summary>
    public MessageState? MailState { get; private set; }

    /// <summary>When the mail was asked for; once it is settled, when that was.</summary>
    public Instant? MailAt { get; private set; }

    /// <summary>How often sending was tried in vain.</summary>
    public int MailTries { get; private set; }

    public MessageFault? MailFault { get; private set; }

    /// <summary>The link is to go by mail.</summary>
    public void Post(Instant at) => (MailState, MailAt, MailTries, MailFault) = (MessageState.Waiting, at, 0, null);

    public void Need(bool isNeeded) => IsNeeded = isNeeded;

    /// <summary>Whether that form has counted already, as the last one or before it.</summary>
    public bool HasCounted(Guid key) => LastKey == key || EarlierKeys.Contains(key);

    public void Answer(
        IReadOnlyDictionary<string, DateAnswer> answers, Guid key, Instant at, bool isLate, ReplacedSaying? replaced = null)
    {
        EarlierKeys = Revision == 0 ? [] : [.. EarlierKeys.Append(LastKey).TakeLast(MostEarlierKeys)];
        (Answers, LastKey, AnsweredAt, IsLate, Replaced) = (answers, key, at, isLate, replaced);
        Revision++;
    }

    /// <summary>Evenings that are no longer asked about take what was said of them along.</summary>
    public void Keep(IReadOnlySet<string> evenings) =>
        Answers = Answers.Where(said => evenings.Contains(said.Key)).ToDictionary(said => said.Key, said => said.Value);

    public void RenewLink()
    {
        LinkGeneration++;
        DisownedAt = null;
        (MailState, MailAt, MailTries, MailFault) = (null, null, 0, null);
    }

    public void Disown(Instant at) => DisownedAt ??= at;
}
