using System.Reflection;
using GameNight.Nights.ForHosts;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Safety;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Wording;

public class CompletenessTests
{
    public static TheoryData<Type> Reasons => [.. Family(typeof(Reason))];

    public static TheoryData<Type> Conflicts => [.. Family(typeof(Conflict))];

    public static TheoryData<Type> Warnings => [.. Family(typeof(PieWarning))];

    public static TheoryData<Type> Words => [.. WordMethods().Select(method => method.GetParameters()[0].ParameterType)];

    [Theory]
    [MemberData(nameof(Reasons))]
    public void Every_reason_has_a_sentence(Type reason) =>
        Assert.All(Samples.Of(reason), sample => AssertSentence(ReasonText.Say((Reason)sample, Measures.Metric)));

    [Theory]
    [MemberData(nameof(Conflicts))]
    public void Every_conflict_has_a_sentence(Type conflict)
    {
        var words = new ConflictText("Europe/Lisbon", _ => "Rui", Measures.Metric);

        Assert.All(Samples.Of(conflict), sample => AssertSentence(words.Say((Conflict)sample)));
    }

    [Theory]
    [MemberData(nameof(Warnings))]
    public void Every_warning_of_a_pie_has_a_sentence(Type warning)
    {
        var words = new PieWarningText(_ => "Rui");

        Assert.All(Samples.Of(warning), sample => AssertSentence(words.Say((PieWarning)sample)));
    }

    [Fact]
    public void Every_step_but_the_hosts_own_says_what_it_is_for()
    {
        var reasons = Enum.GetValues<StepKind>().Where(kind => kind != StepKind.Own).Select(WhyText.Say).ToList();

        Assert.Null(WhyText.Say(StepKind.Own));
        Assert.Equal(reasons.Count, reasons.Distinct().Count());
        Assert.All(reasons, reason => Assert.Matches("^[A-Z].*[.]$", reason!));
    }

    [Fact]
    public void Every_step_has_a_cue_of_its_own()
    {
        var cues = Enum.GetValues<StepKind>().Select(CueText.Say).ToList();

        Assert.All(cues, Assert.NotEmpty);
        Assert.Equal(cues.Count, cues.Distinct().Count());
    }

    [Theory]
    [InlineData(new int[0], "")]
    [InlineData(new[] { 3 }, "3")]
    [InlineData(new[] { 1, 2, 4, 5, 6, 9 }, "1, 2, 4 to 6, 9")]
    public void Numbers_in_a_row_are_said_as_a_range(int[] numbers, string expected) =>
        Assert.Equal(expected, WordText.List(WordText.Ranges(numbers)));

    [Fact]
    public void Every_caution_has_a_sentence_and_an_authority() =>
        Assert.All(Enum.GetValues<CautionKind>(), kind =>
        {
            var authority = SharedFolder.Tables.Safety.Of(kind).Authority;
            var sentence = CautionText.Say(new Caution(kind, authority, [Allergen.Nuts, Allergen.Milk]), Measures.Metric);
            AssertSentence(sentence);
            Assert.EndsWith($"Defer to {authority}.", sentence, StringComparison.Ordinal);
        });

    [Fact]
    public void Every_problem_has_a_sentence()
    {
        Assert.All(Enum.GetValues<SnapshotFault>(), fault =>
            AssertSentence(ProblemText.SayHere(new SnapshotProblem("kitchen.roomCelsius", fault, 99, 5, 40), Measures.Metric)));
        Assert.All(Enum.GetValues<DraftFault>(), fault => AssertSentence(ProblemText.Say(new DraftProblem("title", fault, 0, 80))));
    }

    [Fact]
    public void Every_reason_of_a_range_has_a_sentence_of_its_own()
    {
        var sentences = Enum.GetValues<RangeReason>().ToLookup(RangeReasonText.Say);

        Assert.All(sentences, said => AssertSentence(said.Key));
        Assert.All(sentences, said => Assert.Single(said));
    }

    [Theory]
    [MemberData(nameof(Words))]
    public void Every_value_of_an_enumeration_on_a_screen_has_a_word_of_its_own(Type enumeration)
    {
        var say = WordMethods().Single(method => method.GetParameters()[0].ParameterType == enumeration);

        var words = Enum.GetValues(enumeration).Cast<object>().Select(value => (string)say.Invoke(null, [value])!).ToList();

        Assert.All(words, Assert.NotEmpty);
        Assert.Equal(words.Count, words.Distinct().Count());
    }

    private static IEnumerable<Type> Family(Type parent) =>
        parent.Assembly.GetTypes().Where(type => type.IsSubclassOf(parent) && !type.IsAbstract).OrderBy(type => type.Name);

    private static IEnumerable<MethodInfo> WordMethods() => typeof(WordText).GetMethods(BindingFlags.Public | BindingFlags.Static)
        .Where(method => method.Name == nameof(WordText.Say) && method.GetParameters()[0].ParameterType.IsEnum);

    private static void AssertSentence(string sentence)
    {
        Assert.Matches("^[A-Z0-9].*[.]$", sentence);
        Assert.DoesNotMatch("NaN|∞|  |GameNight\\.", sentence);
    }
}
