namespace GameNight.Planning.Timeline;

/// <summary>The steps of a timeline that is already made, with their lags and their starts.</summary>
internal static class PlacedSteps
{
    /// <param name="night">With the own steps that are in the timeline.</param>
    /// <returns>Null when the timeline was made from another request: some step of it is not there.</returns>
    public static (NightSteps Steps, int[] Starts)? Of(NightInMinutes night, HostTimeline timeline)
    {
        var byId = timeline.Steps.ToDictionary(step => step.Id);
        var waves = timeline.Steps.Where(step => step.Kind == StepKind.Temper).OrderBy(step => step.Number).ToList();
        int[] waveOfPie = [.. Enumerable.Range(1, night.Pies).Select(WaveOf)];
        var steps = new NightSteps(night, waveOfPie, isFirstStraightFromRack: false);
        var planned = steps.Steps.Select(step => byId.GetValueOrDefault(TimelineSteps.IdOf(step.Kind, step.Number))).ToList();
        return planned.TrueForAll(step => step is not null)
            ? (steps, [.. planned.Select(step => night.Clock.Before(step!.Start))])
            : null;

        // The last wave that is warm when the pie is shaped.
        int WaveOf(int pie) => byId.GetValueOrDefault(TimelineSteps.IdOf(StepKind.Shape, pie)) is { } shape
            ? Math.Max(0, waves.FindLastIndex(wave => wave.End <= shape.Start))
            : 0;
    }
}
