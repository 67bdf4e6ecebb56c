namespace GameNight.Planning;

/// <summary>
/// One step of how a value came about, as data: the inputs, not a sentence. Reasons sit beside the model that gives them;
/// the sentences live with the screens. The family is closed to this assembly.
/// </summary>
public abstract record Reason
{
    private protected Reason()
    {
    }
}
