using GameNight.Nights.Records;

namespace GameNight.Nights.Messages;

/// <summary>What a host is told of work that begins soon: steps and times, and nothing of who eats what.</summary>
/// <param name="To">Mail address of the host's account.</param>
public sealed record WorkLetter(
    WorkReminderId Id, string To, string HostName, GroupId Group, string GroupName, NightId Night, string Title, string Zone, WorkStretch Stretch);
