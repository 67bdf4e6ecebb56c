namespace GameNight.Planning.Guests;

/// <summary>Where a guest's answer stands. The host of the night needs no answer.</summary>
public enum AnswerState
{
    Host,
    Coming,
    Undecided,
    NoAnswer,
    NotComing,
}
