using System.Diagnostics;
using System.Globalization;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.TestKit;
using static GameNight.TestKit.Nights.NightBuilder;

// Planner time and allocations by number of guests, then of the models of dough and heat beside a general library, in one run on
// this machine: read the ratios, not the milliseconds.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["--kills", var given])
{
    return await MessageSoak.RunAsync(int.Parse(given, NumberStyles.None, CultureInfo.InvariantCulture));
}

if (args is ["--answers"])
{
    return await AnswerBench.RunAsync();
}

if (args is ["--splits", var nights])
{
    return SplitBench.Soak(int.Parse(nights, NumberStyles.None, CultureInfo.InvariantCulture));
}

if (args is ["--split"])
{
    SplitBench.Run();
    return 0;
}

if (args is ["--timeline"])
{
    TimelineBench.Run();
    return 0;
}

var planner = new NightPlanner(SharedFolder.Tables);
planner.Plan(Night(12), Now, new Effort(1));

Console.WriteLine($"{Environment.ProcessorCount} cores, .NET {Environment.Version}; one solver worker; median of the runs, min to max in brackets");
Console.WriteLine($"{"guests",6} {"pies",5} {"plan",-9} {"ms",26} {"kB",10} {"split",-11} {"timeline",-10} {"of 12 guests, quick",20}");

var reference = 0.0;
foreach (var guests in new[] { 12, 40, 200 })
{
    var night = Night(guests);
    foreach (var (name, effort, runs) in new[] { ("quick", Effort.Quick, 9), ("usual", Effort.Usual, guests > 100 ? 1 : 3) })
    {
        NightPlan? plan = null;
        var milliseconds = new List<double>();
        var allocated = GC.GetTotalAllocatedBytes(precise: true);
        for (var run = 0; run < runs; run++)
        {
            var watch = Stopwatch.StartNew();
            plan = planner.Plan(night, Now, effort);
            milliseconds.Add(watch.Elapsed.TotalMilliseconds);
        }

        allocated = (GC.GetTotalAllocatedBytes(precise: true) - allocated) / runs;
        milliseconds.Sort();
        var median = milliseconds[runs / 2];
        reference = reference == 0 ? median : reference;
        Console.WriteLine(
            $"{guests,6} {plan!.Pies.Count.Value,5} {name,-9} {$"{median:0.0} ({milliseconds[0]:0.0} to {milliseconds[^1]:0.0})",26} "
            + $"{allocated / 1024.0,10:0} {plan.Split.Quality,-11} {plan.Timeline.Quality,-10} {median / reference,20:0.0}");
    }
}

ModelBench.Run();
ForecastBench.Run();
TimelineBench.Run();
SplitBench.Run();
return 0;

// Three of four guests like or dislike something, every eighth keeps a diet or an allergy.
static NightSnapshot Night(int guests)
{
    var tables = SharedFolder.Tables;
    var toppings = tables.Menu.Items.Where(item => item.Role == GameNight.Planning.Toppings.MenuRole.Topping).Select(item => Id(item.Name)).ToList();
    var builder = ANight();
    for (var index = 0; index < guests; index++)
    {
        var needs = (index % 8) switch
        {
            3 => new DietaryNeeds([Diet.Vegetarian], [], []),
            7 => index % 16 == 7 ? new DietaryNeeds([Diet.Vegan], [], []) : new DietaryNeeds([], [Allergen.Fish], []),
            _ => DietaryNeeds.None,
        };
        var likes = index % 4 == 0
            ? []
            : new Dictionary<string, Liking>
            {
                [toppings[index % toppings.Count]] = Liking.Favourite,
                [toppings[index * 5 % toppings.Count]] = Liking.Like,
                [toppings[(index * 3 + 1) % toppings.Count]] = Liking.RatherNot,
            };
        builder.With(AnswerState.Coming, AnEater($"guest-{index}", needs: needs, likes: likes));
    }

    // Four at a time and three hands, or 80 pies take all night.
    return builder.But(night => night with
    {
        Kitchen = night.Kitchen with { PiesPerBake = guests > 20 ? 4 : 1, Hands = guests > 20 ? 3 : 1 },
        Away = [],
    }).Build();
}
