using GameNight.Planning;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>A plan as it was made: never patched, only replaced. Ids only; names are joined when it is shown.</summary>
public sealed class SavedPlan
{
    /// <summary>Shape of the stored document; old versions are kept readable by samples in the tests.</summary>
    public const int CurrentEnvelope = 1;

    public SavedPlan(GroupId groupId, NightId nightId)
    {
        GroupId = groupId;
        NightId = nightId;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public int Envelope { get; private set; }
    public string Fingerprint { get; private set; } = "";
    public string EngineVersion { get; private set; } = "";
    public PlanStage Stage { get; private set; }
    public int SolverSlices { get; private set; }
    public Instant MadeAt { get; private set; }

    /// <summary>When answers stop moving the dough, copied out of the document.</summary>
    public Instant? AnswerBy { get; private set; }

    /// <summary>When mixing begins, copied out of the document.</summary>
    public Instant? DoughCommitment { get; private set; }

    public string Document { get; private set; } = "{}";

    public void Replace(string fingerprint, NightPlan plan, Instant madeAt, string document)
    {
        Envelope = CurrentEnvelope;
        Fingerprint = fingerprint;
        EngineVersion = plan.EngineVersion;
        Stage = plan.Stage;
        SolverSlices = plan.SolverSlices;
        MadeAt = madeAt;

        // A dough that is begun stays so, even in a plan that finds no time for the rest.
        if (plan.Timeline.DoughCommitment is not null || !(DoughCommitment <= madeAt))
        {
            AnswerBy = plan.Timeline.AnswerBy;
            DoughCommitment = plan.Timeline.DoughCommitment;
        }

        Document = document;
    }
}
