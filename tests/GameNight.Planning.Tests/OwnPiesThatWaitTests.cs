using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class OwnPiesThatWaitTests
{
    private static readonly DietaryNeeds NoNutsNear = new([], [], [Allergen.Nuts]);

    [Fact]
    public void An_own_pie_that_is_out_long_before_its_guest_is_told_with_its_wait()
    {
        var (night, plan) = PlanFor(new Stay(ComesAfter: Duration.FromMinutes(90)));

        var waits = Assert.Single(plan.Conflicts.OfType<OwnPieWaits>());

        var own = Assert.Single(plan.Split.Pies, pie => pie.IsOwnPie);
        var served = plan.Timeline.Steps.Single(step => step.Kind == StepKind.Serve && step.Number == own.Number).End;
        Assert.Equal((own.Number, night.ServeAt + Duration.FromMinutes(90) - served), (waits.PieNumber, waits.Waits));
        Assert.Equal(1, own.Number);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(10)]
    public void An_own_pie_whose_guest_is_there_for_it_is_not_remarked(int? comesAfterMinutes)
    {
        var stay = comesAfterMinutes is { } minutes ? new Stay(ComesAfter: Duration.FromMinutes(minutes)) : null;

        Assert.Empty(PlanFor(stay).Plan.Conflicts.OfType<OwnPieWaits>());
    }

    [Fact]
    public void Other_pies_of_a_late_guest_are_no_own_pies()
    {
        var night = ANight().WithGuests(5).Build();
        night = night with { Guests = [.. night.Guests.Skip(1), night.Guests[0] with { Stay = new Stay(ComesAfter: Duration.FromHours(2)) }] };

        Assert.Empty(new NightPlanner(SharedFolder.Tables).Plan(night, Now, Effort.Quick).Conflicts.OfType<OwnPieWaits>());
    }

    private static (NightSnapshot Night, NightPlan Plan) PlanFor(Stay? stay)
    {
        var night = ANight().WithGuests(5).Build();
        var one = night.Guests[0];
        night = night with
        {
            Guests = [.. night.Guests.Skip(1), one with { Stay = stay, Eaters = [.. one.Eaters.Select(eater => eater with { Needs = NoNutsNear })] }],
        };
        return (night, new NightPlanner(SharedFolder.Tables).Plan(night, Now, Effort.Quick));
    }
}
