using GameNight.Nights.Moving;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Wording;

public class DocumentProblemTests
{
    [Fact]
    public void Every_fault_has_a_sentence_with_its_place() => Assert.All(
        Enum.GetValues<DocumentFault>(),
        fault =>
        {
            var says = DocumentProblemText.Say(new DocumentProblem("$.nights[3].facts.title", fault, 1, 80));
            Assert.StartsWith("$.nights[3].facts.title: ", says, StringComparison.Ordinal);
            Assert.EndsWith(".", says, StringComparison.Ordinal);
        });

    [Fact]
    public void A_place_without_end_is_cut() =>
        Assert.True(DocumentProblemText.Say(new DocumentProblem(new string('x', 5000), DocumentFault.Repeated)).Length < 250);
}
