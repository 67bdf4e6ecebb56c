using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>Somebody the group invites. A host is an eater too and has a guest record of their own.</summary>
public sealed class Guest
{
    public const int LongestName = 60;
    public const int LongestHousehold = 40;

    public Guest(GroupId groupId, GuestId id, string name, PortionClass portion, HostId? hostId)
    {
        GroupId = groupId;
        Id = id;
        Name = name;
        Portion = portion;
        HostId = hostId;
    }

    public GroupId GroupId { get; private set; }
    public GuestId Id { get; private set; }
    public string Name { get; private set; }
    public PortionClass Portion { get; private set; }

    /// <summary>The account of a host, null for a guest without one.</summary>
    public HostId? HostId { get; private set; }

    /// <summary>Invited to every new night unless the host takes them off.</summary>
    public bool IsStanding { get; private set; } = true;

    /// <summary>Invited for one night only: gone with its links unless a host keeps them.</summary>
    public bool IsOneOff { get; private set; }

    /// <summary>Who lives under one roof comes together or not at all: the same name, null for nobody to come with.</summary>
    public string? Household { get; private set; }

    /// <summary>The guest allows other guests to read their name among those who come.</summary>
    public bool ShowsName { get; private set; }

    /// <summary>Left or was removed then: the name is gone, counts of past nights stay, and no list offers them.</summary>
    public Instant? FormerSince { get; private set; }

    /// <summary>Null when nobody gave an address and the guest has not said that they want no messages.</summary>
    public Contact? Contact { get; private set; }

    /// <summary>Part of the secret of the guest's calendar link; 0 before they asked for one.</summary>
    public int FeedGeneration { get; private set; }

    public bool TakesMail => Contact?.TakesMail ?? false;

    /// <param name="address">Empty takes it away.</param>
    /// <param name="byGuest">A guest who gives an address wants messages; a host does not undo that a guest stopped them.</param>
    public void Reach(string address, bool byGuest, Instant at)
    {
        var stopped = byGuest ? null : Contact?.StoppedAt;
        Contact = address.Length == 0 && stopped is null
            ? null
            : new Contact(address, byGuest, at, Contact.ConsentVersion, stopped);
    }

    public void StopMessages(Instant at) =>
        Contact = (Contact ?? new Contact("", ByGuest: true, at, Contact.ConsentVersion)) is { StoppedAt: null } reached
            ? reached with { StoppedAt = at }
            : Contact;

    public void StartMessages() =>
        Contact = Contact is { MailAddress.Length: > 0 } reached ? reached with { StoppedAt = null } : null;

    /// <summary>A document brings it along as it was.</summary>
    internal void Keep(Contact? contact) => Contact = contact;

    /// <summary>Ends the calendar link there was and makes another.</summary>
    public void RenewFeed() => FeedGeneration++;

    public void Set(string name, PortionClass portion)
    {
        Name = name;
        Portion = portion;
    }

    /// <summary>Who is invited to every night is no longer one of a single night.</summary>
    public void Stand(bool isStanding)
    {
        IsStanding = isStanding;
        IsOneOff &= !isStanding;
    }

    public void ComeOnce() => (IsOneOff, IsStanding) = (true, false);

    /// <summary>Stays in the group's list after all.</summary>
    public void Stay() => IsOneOff = false;

    public void LiveIn(string? household) => Household = household;

    public void ShowName(bool shows) => ShowsName = shows;

    /// <summary>A host's account joins this guest record, or leaves it.</summary>
    public void BelongTo(HostId? host) => HostId = host;

    public void Leave(Instant at)
    {
        Name = "";
        HostId = null;
        IsStanding = false;
        ShowsName = false;
        IsOneOff = false;
        Household = null;
        Contact = null;
        FeedGeneration = 0;
        FormerSince ??= at;
    }
}
