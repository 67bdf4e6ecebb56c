using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Dates;

/// <summary>What somebody says of an evening. Who says nothing is believed as one who has not answered an invitation.</summary>
public enum DateAnswer
{
    Works,
    AtAPinch,
    No,
}

/// <summary>An evening that could be the next one.</summary>
/// <param name="ServeAt">The first pie on the table.</param>
/// <param name="Day">The day of it, where the host lives.</param>
public sealed record DateOption(string Id, Instant ServeAt, LocalDate Day);

/// <summary>Somebody who is asked for a date. Companions are not known yet and count for nothing.</summary>
/// <param name="Answers">By the option's id; what is missing is not answered.</param>
/// <param name="Household">Who shares one and says the same of an evening comes together or not at all.</param>
/// <param name="MissedInARow">So many of the last nights went by without them; 0 for who was there last time.</param>
/// <param name="MustHave">Without them there is no such night.</param>
/// <param name="IsHost">Comes to a night of their own unless they say no.</param>
public sealed record DateGuest(
    string Id,
    IReadOnlyDictionary<string, DateAnswer> Answers,
    IReadOnlyList<PastEvening>? Past = null,
    string? Household = null,
    int MissedInARow = 0,
    bool MustHave = false,
    bool IsHost = false);

/// <summary>What a dough takes before an evening and on it.</summary>
/// <param name="Mixing">Hands, from the first flour to the dough that rests.</param>
/// <param name="Rest">No hands.</param>
/// <param name="Balling">Hands.</param>
/// <param name="Tempering">From balls out of the fridge to the first one that is shaped; no hands.</param>
/// <param name="FirstPie">Hands, from shaping the first ball to the first pie on the table.</param>
public sealed record DoughLead(
    Duration Mixing, Duration Rest, Duration Balling, Duration Tempering, Duration FirstPie, ColdFerment Cold)
{
    /// <param name="balls">So many are rounded, 1 or more.</param>
    public static DoughLead Of(KitchenSnapshot kitchen, int balls, ColdFerment cold, StepTable steps)
    {
        return new DoughLead(
            Minutes(StepName.Mix) + Minutes(kitchen.Kneading == Dough.KneadingWay.ByHand ? StepName.KneadByHand : StepName.KneadMixer),
            Minutes(StepName.BulkRest),
            Minutes(StepName.BallEach) * balls,
            Minutes(StepName.Temper),
            Minutes(StepName.Shape) + Minutes(StepName.Top) + kitchen.Bake + Minutes(StepName.Rack) + Minutes(StepName.Serve),
            cold);

        Duration Minutes(StepName step) => kitchen.LengthOf(step, steps);
    }
}

/// <summary>Everything that the choice of a date depends on.</summary>
/// <param name="Quorum">So many people make a night, hosts counted in; 1 or more.</param>
/// <param name="Dough">Null leaves the dough out of it.</param>
/// <param name="HandsAway">When nobody can work on the dough: sleep, work.</param>
/// <param name="EveningsTaken">When the host cannot have guests: work, another night.</param>
/// <param name="DaysOff">Days on which there is no night.</param>
/// <param name="Length">From the first pie to the end.</param>
public sealed record DateRequest(
    IReadOnlyList<DateOption> Options,
    IReadOnlyList<DateGuest> Guests,
    int Quorum,
    Instant Now,
    DoughLead? Dough,
    IReadOnlyList<HostAway> HandsAway,
    IReadOnlyList<HostAway> EveningsTaken,
    IReadOnlyList<LocalDate> DaysOff,
    Duration Length);
