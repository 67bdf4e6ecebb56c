using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Planning.Contract;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Contract;

public class PlanJsonTests
{
    private static readonly NightSnapshot Night = ANight()
        .WithGuests(5)
        .With(AnswerState.Undecided, AnEater("vegan", needs: new DietaryNeeds([Diet.Vegan], [Allergen.Nuts], [Allergen.Fish])))
        .But(night => night with { ByHand = ByHand.Nothing with { MixAt = Instant.FromUtc(2026, 12, 10, 17, 30) } })
        .Build();

    [Fact]
    public void A_quantity_is_one_number_in_the_unit_that_ends_its_fields_name()
    {
        var json = JsonNode.Parse(PlanJson.Canonical(Night))!;

        Assert.Equal(21, json["kitchen"]!["roomCelsius"]!.GetValue<double>());
        Assert.Equal(1500, json["kitchen"]!["batchCapacityGrams"]!.GetValue<double>());
        Assert.Equal(7, json["kitchen"]!["bakeMinutes"]!.GetValue<double>());
        Assert.Equal(33, json["shape"]!["diameterCentimetres"]!.GetValue<double>());
        Assert.Equal(0.1, json["runOutChance"]!.GetValue<double>());
        Assert.Equal("2026-12-12T18:30:00Z", json["serveAt"]!.GetValue<string>());
    }

    [Fact]
    public void A_snapshot_comes_back_as_it_was() =>
        Assert.Equal(PlanJson.Canonical(Night), PlanJson.Canonical(RoundTrip(Night)));

    [Fact]
    public void A_plan_comes_back_as_it_was_with_reasons_and_conflicts_by_name()
    {
        var plan = new NightPlanner(SharedFolder.Tables).Plan(Night, Now, Effort.Quick);
        var text = PlanJson.Canonical(plan);

        Assert.Equal(text, PlanJson.Canonical(RoundTrip(plan)));
        Assert.Contains("\"kind\":\"answersCounted\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Any_offset_is_read_as_the_same_moment()
    {
        var berlin = PlanJson.Canonical(Night).Replace("2026-12-12T18:30:00Z", "2026-12-12T19:30:00+01:00", StringComparison.Ordinal);

        Assert.Equal(Night.ServeAt, JsonSerializer.Deserialize<NightSnapshot>(berlin, PlanJson.Options)!.ServeAt);
    }

    [Theory]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":-300")]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":\"21\"")]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":\"NaN\"")]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":NaN")]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":1e400")]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":null")]
    [InlineData("\"roomCelsius\":21", "\"room\":21")]
    [InlineData("\"roomCelsius\":21", "\"roomCelsius\":21,\"roomCelsius\":22")]
    [InlineData("\"batchCapacityGrams\":1500", "\"batchCapacityGrams\":-1")]
    [InlineData("\"bakeMinutes\":7", "\"bakeMinutes\":1e9")]
    [InlineData("\"runOutChance\":0.1", "\"runOutChance\":-0.1")]
    [InlineData("\"serveAt\":\"2026-12-12T18:30:00Z\"", "\"serveAt\":\"2026-12-12T18:30:00\"")]
    [InlineData("\"answer\":\"coming\"", "\"answer\":\"2\"")]
    [InlineData("\"answer\":\"coming\"", "\"answer\":2")]
    public void What_is_no_snapshot_is_refused_and_never_read_as_zero(string right, string wrong)
    {
        var text = PlanJson.Canonical(Night);
        Assert.Contains(right, text, StringComparison.Ordinal);

        Assert.ThrowsAny<JsonException>(() =>
            JsonSerializer.Deserialize<NightSnapshot>(text.Replace(right, wrong, StringComparison.Ordinal), PlanJson.Options));
    }

    [Fact]
    public void Every_reason_and_conflict_has_a_name_of_its_own()
    {
        var families = new (Type Base, IReadOnlyDictionary<Type, string> Names)[]
        {
            (typeof(Reason), Discriminators.Reasons), (typeof(Conflict), Discriminators.Conflicts),
        };
        foreach (var (family, names) in families)
        {
            var all = family.Assembly.GetTypes().Where(type => type.IsSubclassOf(family));
            Assert.Equal(all.ToHashSet(), names.Keys.ToHashSet());
            Assert.Equal(names.Count, names.Values.Distinct().Count());
        }
    }

    [Fact]
    public void The_fingerprint_follows_the_night_the_engine_and_the_tables()
    {
        var tables = SharedFolder.Tables;
        var fingerprint = PlanJson.Fingerprint(Night, tables);

        Assert.Equal(fingerprint, PlanJson.Fingerprint(RoundTrip(Night), tables));
        Assert.NotEqual(fingerprint, PlanJson.Fingerprint(Night with { RunOutChance = new Share(0.2) }, tables));
        Assert.NotEqual(fingerprint, PlanJson.Fingerprint(Night, tables with { Hash = "other" }));
        Assert.Equal(64, fingerprint.Length);
    }

    private static T RoundTrip<T>(T value) =>
        JsonSerializer.Deserialize<T>(JsonSerializer.Serialize(value, PlanJson.Options), PlanJson.Options)!;
}
