using GameNight.Planning;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Dough;

/// <summary>One way beside the others: number 0 is the plan as it stands.</summary>
public sealed record ComparedWay(int Number, NightSnapshot Night, NightPlan Plan)
{
    public string Name => Number == 0 ? DoughPages.AsPlanned : Phrase.Fill(DoughPages.Way, Number);
}
