namespace GameNight.Nights.Records;

/// <summary>An id that is a UUID of version 7, made in code. Never a secret.</summary>
public interface IRecordId<TSelf>
    where TSelf : struct, IRecordId<TSelf>
{
    Guid Value { get; }

    static abstract TSelf From(Guid value);
}

public readonly record struct GroupId(Guid Value) : IRecordId<GroupId>
{
    public static GroupId From(Guid value) => new(value);
    public static GroupId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct HostId(Guid Value) : IRecordId<HostId>
{
    public static HostId From(Guid value) => new(value);
    public override string ToString() => Value.ToString("N");
}

public readonly record struct NightId(Guid Value) : IRecordId<NightId>
{
    public static NightId From(Guid value) => new(value);
    public static NightId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct GuestId(Guid Value) : IRecordId<GuestId>
{
    public static GuestId From(Guid value) => new(value);
    public static GuestId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct MessageId(Guid Value) : IRecordId<MessageId>
{
    public static MessageId From(Guid value) => new(value);
    public static MessageId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct WorkReminderId(Guid Value) : IRecordId<WorkReminderId>
{
    public static WorkReminderId From(Guid value) => new(value);
    public static WorkReminderId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct HostInvitationId(Guid Value) : IRecordId<HostInvitationId>
{
    public static HostInvitationId From(Guid value) => new(value);
    public static HostInvitationId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct FormulaId(Guid Value) : IRecordId<FormulaId>
{
    public static FormulaId From(Guid value) => new(value);
    public static FormulaId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct MenuItemId(Guid Value) : IRecordId<MenuItemId>
{
    public static MenuItemId From(Guid value) => new(value);
    public static MenuItemId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct DateChoiceId(Guid Value) : IRecordId<DateChoiceId>
{
    public static DateChoiceId From(Guid value) => new(value);
    public static DateChoiceId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}

public readonly record struct AskedGuestId(Guid Value) : IRecordId<AskedGuestId>
{
    public static AskedGuestId From(Guid value) => new(value);
    public static AskedGuestId New() => new(Guid.CreateVersion7());
    public override string ToString() => Value.ToString("N");
}
