namespace GameNight.Planning.Timeline;

/// <content>Own steps, the places they take, and whose hands do what.</content>
public static partial class TimelineCheck
{
    private sealed partial class Checking
    {
        private void Own()
        {
            var left = timeline.Conflicts.OfType<OwnStepFindsNoRoom>().Select(conflict => conflict.Number).ToHashSet();
            var asked = (request.Own ?? []).ToDictionary(step => step.Number);
            Hold(_byKind[StepKind.Own].All(step => asked.ContainsKey(step.Number) || !_placed.Contains(step)), "an own step nobody asked for");
            foreach (var (number, asking) in asked)
            {
                if (_byKind[StepKind.Own].FirstOrDefault(step => step.Number == number) is not { } step)
                {
                    Hold(
                        left.Contains(number) || asking.Until - asking.Length < request.Now
                            || (asking.Before is { } past && (request.BegunDough ?? []).Any(other => IsTied(other, past))),
                        $"own step {number} is missing");
                }
                else if (_placed.Contains(step))
                {
                    Own(step, asking);
                }
            }
        }

        private void Own(TimelineStep step, OwnStep asking)
        {
            Hold(step.End - step.Start >= asking.Length && step.End - step.Start < asking.Length + Rounding, $"{step.Id} has the wrong length");
            Hold(!(step.Start < asking.From) && !(step.End > asking.Until), $"{step.Id} is outside its hours");
            var before = timeline.Steps.Where(other => asking.After is { } tie && IsTied(other, tie)).ToList();
            var next = timeline.Steps.Where(other => asking.Before is { } tie && IsTied(other, tie));
            Hold(before.TrueForAll(other => other.End <= step.Start) && next.All(other => step.End <= other.Start), $"{step.Id} is on the wrong side of a step");
            Hold(
                !before.Exists(_placed.Contains) || step.Start - before.Max(other => other.End) <= TimelineLimits.OwnStepAfter,
                $"{step.Id} comes a day after what it follows");
        }

        /// <summary>One ring of the hob each; the oven at another heat never while it is the pies'.</summary>
        private void Stations()
        {
            var takes = (request.Own ?? []).Where(own => own.Takes is not null).ToDictionary(own => own.Number, own => own.Takes);
            List<TimelineStep> hob = [.. _placed.Where(step => step.Kind == StepKind.Sauce || Takes(step, Station.Hob))];
            List<TimelineStep> oven = [.. _placed.Where(step => Takes(step, Station.OvenAtOtherHeat))];
            Hold(hob.TrueForAll(step => !(AtOnce(hob, step) > request.HobRings)), "a step finds no ring of the hob");
            Hold(oven.TrueForAll(step => AtOnce(oven, step) == 1), "two steps want the oven at heats of their own");
            foreach (var step in oven)
            {
                Hold(
                    step.End <= One(StepKind.Preheat).Start || step.Start >= _byKind[StepKind.Bake].Max(bake => bake.End),
                    $"{step.Id} wants the oven while it is the pies'");
            }

            bool Takes(TimelineStep step, Station station) => step.Kind == StepKind.Own && takes.GetValueOrDefault(step.Number) == station;

            static int AtOnce(List<TimelineStep> all, TimelineStep step) => all.Count(other => other.Start <= step.Start && step.Start < other.End);
        }

        private static bool IsTied(TimelineStep step, StepTie tie) =>
            step.Kind == tie.Step && (tie.Step != StepKind.Own || step.Number == tie.Number);

        private void Hands()
        {
            var busy = _placed.Where(step => step.NeedsHands).ToList();
            foreach (var step in busy)
            {
                var atOnce = busy.Count(other => other.Start <= step.Start && step.Start < other.End);
                Hold(atOnce <= request.Hands, $"{step.Id} finds no hands");
            }
        }

        /// <summary>Who does what: one thing at a time, nothing beyond their skill, and an own step by whom it is for.</summary>
        private void People()
        {
            var work = _placed.Where(step => step.NeedsHands && step.End > step.Start).ToList();
            foreach (var step in work)
            {
                var person = step.By ?? 0;
                var skill = person == 0 ? HelperSkill.Everything : request.Helpers?.ElementAtOrDefault(person - 1) ?? HelperSkill.Everything;
                Hold(person >= 0 && person < request.Hands, $"{step.Id} is given to somebody who is not there");
                Hold(work.Count(other => other.By == step.By && other.Start <= step.Start && step.Start < other.End) == 1, $"{step.Id} is a second thing for the same hands");
                Hold(skill == HelperSkill.Everything || request.ForCooks?.Contains(step.Kind) != true, $"{step.Id} is given to somebody who only fetches and clears");
                var who = step.Kind == StepKind.Own ? request.Own?.FirstOrDefault(own => own.Number == step.Number)?.Who : null;
                Hold(who is null || who >= request.Hands || who == person, $"{step.Id} is given to somebody else");
            }
        }
    }
}
