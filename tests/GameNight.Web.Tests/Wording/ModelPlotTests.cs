using System.Globalization;
using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Drawings;
using NodaTime;

namespace GameNight.Web.Tests.Wording;

/// <summary>The plots in <c>shared/models</c> show what the models say now.</summary>
public class ModelPlotTests
{
    private static readonly string Folder = Path.Combine(SharedFolder.Root, "models");
    private static readonly MaterialsTable Materials = SharedFolder.Tables.Materials;
    private static readonly Instant Mixed = Instant.FromUtc(2026, 1, 1, 0, 0);

    private static readonly DoughFormula Formula = new(
        new Share(0.62), new Share(0.025), new Share(0.02), default, false, YeastForm.Fresh, default, default);

    public static TheoryData<string> Files => [.. Plots().Select(plot => plot.File)];

    [Theory]
    [MemberData(nameof(Files))]
    public async Task A_plot_shows_what_its_model_says_now(string file)
    {
        var drawn = await Plots().Single(plot => plot.File == file).DrawnAsync();
        var kept = Path.Combine(Folder, file);
        if (!File.Exists(kept) || await File.ReadAllTextAsync(kept, TestContext.Current.CancellationToken) != drawn)
        {
            var beside = Path.Combine(AppContext.BaseDirectory, file);
            await File.WriteAllTextAsync(beside, drawn, TestContext.Current.CancellationToken);
            Assert.Fail($"The model says something else than its plot. If that is meant, copy {beside} over {kept}.");
        }
    }

    [Fact]
    public void Every_plot_stands_in_a_page_and_every_page_has_one()
    {
        var pages = Directory.GetFiles(Folder, "*.md").Select(File.ReadAllText).ToList();

        Assert.All(Plots(), plot => Assert.Contains(pages, page => page.Contains($"({plot.File})", StringComparison.Ordinal)));
        Assert.All(pages, page => Assert.Contains(".svg)", page, StringComparison.Ordinal));
    }

    private static IEnumerable<ModelPlot> Plots() => [Course(), Dose(), Ball(), Evening(), Moisture(), Simmer(), Pies()];

    private static ModelPlot Pies()
    {
        return new ModelPlot(
            "appetite-pies.svg", "Run-out chance by number of pies of 33 cm, for nine guests who come, the same in three households, and with a second hot dish",
            ChartScale.Over(1, value => $"{100 * value:0} %"), 3, 12,
            [
                Curve("nine who come", "first", "g", [], 8.2),
                Curve("nine undecided, in three households", "second", "house", [], 6.4),
                Curve("with a second hot dish", "third", "g", [new Course("stew", AppetiteTaken.ALot)], 4.3),
            ],
            [.. Enumerable.Range(3, 10).Select(pies => new ChartMark(pies, $"{pies}"))]);

        ChartLine Curve(string name, string kind, string household, IReadOnlyList<Course> courses, double namedAt)
        {
            var guests = Enumerable.Range(0, 9).Select(index => new GuestSnapshot(
                $"g{index}", household == "house" ? AnswerState.Undecided : AnswerState.Coming, [NightBuilder.AnEater($"g{index}")],
                household == "house" ? $"house-{index / 3}" : null)).ToList();
            var (_, demand) = AppetiteModel.Forecast(guests, new Grams(325), 8, SharedFolder.Tables.Appetite, courses);
            return new ChartLine(name, kind, [.. Enumerable.Range(3, 10).Select(pies => ((double)pies, demand.MoreThan(8 * pies)))], namedAt);
        }
    }

    private static ModelPlot Course()
    {
        var journey = Journey(48, 5);
        var ripening = RipeningModel.For(
            journey, Formula, Dosed(journey).ShareOfFlour.Value, Mixed, [], (Duration.FromHours(40), Duration.FromHours(72)), SharedFolder.Tables.Fermentation,
            SharedFolder.Tables.Dough, Materials);
        var from = (ripening.Window.From!.Value - Mixed).TotalHours;
        var end = (ripening.Course[^1].At - Mixed).TotalHours;
        return new ModelPlot(
            "fermentation-course.svg", "Gas of a dough of 48 hours at 5 °C, made and dissolved, in mL per 100 g of flour",
            ChartScale.Over(100, value => $"{value:0} mL"), 0, end,
            [
                new("gas made", "first", [.. ripening.Course.Select(state => ((state.At - Mixed).TotalHours, state.GasMillilitresPer100GramsFlour))], 38),
                new("dissolved in its water", "second", [.. ripening.Course.Select(state => ((state.At - Mixed).TotalHours, state.DissolvedMillilitresPer100GramsFlour))], 15),
            ],
            Hours(12, end), [new(from, end, "can be baked", "ready")]);
    }

    private static ModelPlot Dose()
    {
        var fridges = Enumerable.Range(4, 15).Select(half => half / 2.0).ToList();
        var dosed = fridges.Select(fridge => (Fridge: fridge, Dose: Dosed(Journey(48, fridge)))).ToList();
        var doses = dosed.Select(one => (one.Fridge, one.Dose.ShareOfFlour.Value.Percent)).ToList();
        return new ModelPlot(
            "fermentation-dose.svg", "Fresh yeast in percent of flour for 48 hours in the cold, by fridge temperature, with its band",
            ChartScale.Over(dosed.Max(one => Percent(one.Dose, one.Dose.Total.High)), value => $"{value.ToString("0.0#", CultureInfo.InvariantCulture)} %"), 2, 9,
            [
                new("dose", "first", doses, 4),
                new("four times in five", "second", [.. dosed.Select(one => (one.Fridge, Percent(one.Dose, one.Dose.Total.High)))], 4),
                new("", "second", [.. dosed.Select(one => (one.Fridge, Percent(one.Dose, one.Dose.Total.Low)))], 4),
            ],
            [.. Enumerable.Range(2, 8).Select(celsius => new ChartMark(celsius, $"{celsius} °C"))]);
    }

    private static ModelPlot Ball()
    {
        var dough = FoodComposition.Of(Formula, Materials).At(20, Materials);
        return new ModelPlot(
            "heat-ball.svg", "Core of a ball of 250 g: from 4 °C in a room of 22 °C on the counter and in a box, and from 24 °C in a fridge of 4 °C",
            ChartScale.Over(25, value => $"{value:0} °C"), 0, 6,
            [
                Core("on the counter", "first", 4, 22, DoughPlace.Counter, 1.2),
                Core("in a box with a lid", "second", 4, 22, DoughPlace.LiddedBox, 4),
                Core("into the fridge, in a box", "third", 24, 4, DoughPlace.LiddedBox, 1),
            ],
            Hours(1, 6));

        ChartLine Core(string name, string kind, double from, double place, DoughPlace where, double namedAt)
        {
            var core = BallHeat.Over(
                from, [new HeatPhase(Duration.FromHours(6), new Grams(250), place, Materials.Of(where).WPerM2K)], dough, 5).CoreCelsius;
            return new ChartLine(name, kind, [.. core.Select((celsius, index) => (index / 12.0, celsius))], namedAt);
        }
    }

    private static ModelPlot Evening()
    {
        var stone = new BakingSurface(SurfaceKind.Cordierite, 15, new Centimetres(38), new Centimetres(38));
        var oven = new Oven(new Celsius(21), new Celsius(250), Duration.FromMinutes(25), OvenAir.Static, SurfaceSupport.WireRack);
        var dough = FoodComposition.Of(Formula, Materials).At(20, Materials);
        var bakes = new Bakes(
            [.. Enumerable.Range(0, 5).Select(pie => Duration.FromMinutes(90 + 20 * pie))], Duration.FromMinutes(7),
            PieHeat.Of(new Grams(250), new Grams(200), new Celsius(18), new Altitude(0), dough, Materials), 0.08);
        var evening = SurfaceHeat.Over(stone, oven, Duration.FromHours(3.5), Materials, bakes);
        return new ModelPlot(
            "heat-evening.svg", "Top of a stone of 15 mm over an evening with five pies, and the air above it",
            ChartScale.Over(250, value => $"{value:0} °C"), 0, 3.5,
            [
                new("stone", "first", [.. evening.TopCelsius.Select((celsius, minute) => (minute / 60.0, celsius))], 0.75),
                new("air", "second", [.. evening.AirCelsius.Select((celsius, minute) => (minute / 60.0, celsius))], 0.25),
            ],
            Hours(0.5, 3.5));
    }

    private static ModelPlot Moisture()
    {
        var room = new Celsius(21);
        var humidities = Enumerable.Range(30, 51).ToList();
        return new ModelPlot(
            "dough-moisture.svg", "Water in percent of wheat's mass by the humidity of a room of 21 °C: two laws for hard wheat, one for soft",
            ChartScale.Over(18, value => $"{value:0} %", 6), 30, 80,
            [
                Of("hard, after Henderson", "first", 70, wheat => wheat.ByHenderson, WheatKind.Hard),
                Of("hard, after Chung and Pfost", "second", 42, wheat => wheat.ByChungPfost, WheatKind.Hard),
                Of("soft, after Henderson", "third", 62, wheat => wheat.ByHenderson, WheatKind.Soft),
            ],
            [.. Enumerable.Range(3, 6).Select(tenth => new ChartMark(10 * tenth, $"{10 * tenth} %"))]);

        ChartLine Of(string name, string kind, double namedAt, Func<WheatIsotherm, Func<Celsius, Share, Share>> law, WheatKind wheat) => new(
            name, kind,
            [.. humidities.Select(humidity => ((double)humidity, law(SharedFolder.Tables.Flour.Of(wheat))(room, new Share(humidity / 100.0)).Percent))],
            namedAt);
    }

    private static ModelPlot Simmer()
    {
        var sauces = SharedFolder.Tables.Sauces;
        var minutes = Enumerable.Range(1, 12).Select(step => 10.0 * step).ToList();
        return new ModelPlot(
            "sauce-simmer.svg", "Finished mass of sauce from one and from three tins by the minutes it simmers in one open pot",
            ChartScale.Over(3200, value => $"{value / 1000:0.0} kg"), 10, 120,
            [Finished(800, "one tin of 800 g", "first"), Finished(2400, "three of them", "second")],
            [.. minutes.Where(minute => minute % 20 == 0).Select(minute => new ChartMark(minute, $"{minute:0} min"))]);

        ChartLine Finished(double tin, string name, string kind) => new(
            name, kind,
            [
                .. minutes.Select(minute => (minute, SaucePlan.For(
                    sauces.Formula(sauces.Formulas[0]) with { Simmer = Duration.FromMinutes(minute) }, new Grams(1), new Grams(1), [new Grams(tin)], sauces,
                    SharedFolder.Tables.Foods).Finished.Value)),
            ],
            90);
    }

    private static IReadOnlyList<ChartMark> Hours(double step, double until) =>
    [
        .. Enumerable.Range(1, (int)(until / step)).Select(index => new ChartMark(
            step * index, string.Create(CultureInfo.InvariantCulture, $"{step * index:0.#} h"))),
    ];

    private static DoughJourney Journey(double coldHours, double fridge) => new(
        new Celsius(24), Duration.FromHours(2.5), Duration.FromHours(coldHours), Duration.FromHours(2), new Celsius(21), new Celsius(fridge), 0,
        new Grams(250), new Grams(1500));

    private static YeastDose Dosed(DoughJourney journey) => YeastDoseModel.For(
        journey, Formula, new Grams(1000), null, SharedFolder.Tables.Fermentation, SharedFolder.Tables.Dough, Materials);

    private static double Percent(YeastDose dose, Grams mass) => dose.ShareOfFlour.Value.Percent * (mass / dose.Total.Expected);
}
