using GameNight.Nights.Records;

namespace GameNight.Nights.Messages;

/// <summary>What came of handing a message to a mail server.</summary>
public abstract record CarryResult
{
    private CarryResult()
    {
    }

    /// <summary>The server answers for it from now on.</summary>
    public sealed record Accepted : CarryResult;

    /// <summary>The server will never take it.</summary>
    public sealed record Refused(MessageFault Fault) : CarryResult;

    /// <summary>Not now.</summary>
    /// <param name="IsForAll">Nothing of this message stands in the way: others would fare no better.</param>
    public sealed record TryLater(MessageFault Fault, bool IsForAll) : CarryResult;
}

/// <summary>Takes messages to a mail server; the words are its own.</summary>
public interface IMessageCarrier
{
    /// <summary>False where no mail server is set: hosts pass messages on by hand.</summary>
    bool CanCarry { get; }

    /// <summary>
    /// Hands one message over. It may be one that was handed over before: then it bears the same Message-ID.
    /// </summary>
    /// <param name="cancellation">Ends it before anything is handed over, and no later.</param>
    Task<CarryResult> CarryAsync(Letter letter, CancellationToken cancellation);

    /// <inheritdoc cref="CarryAsync(Letter, CancellationToken)"/>
    Task<CarryResult> CarryAsync(QuestionLetter letter, CancellationToken cancellation);

    /// <inheritdoc cref="CarryAsync(Letter, CancellationToken)"/>
    Task<CarryResult> CarryAsync(WorkLetter letter, CancellationToken cancellation);
}

/// <summary>Where no mail server is set.</summary>
internal sealed class ByHandOnly : IMessageCarrier
{
    public bool CanCarry => false;

    public Task<CarryResult> CarryAsync(Letter letter, CancellationToken cancellation) => Away;

    public Task<CarryResult> CarryAsync(QuestionLetter letter, CancellationToken cancellation) => Away;

    public Task<CarryResult> CarryAsync(WorkLetter letter, CancellationToken cancellation) => Away;

    private static Task<CarryResult> Away =>
        Task.FromResult<CarryResult>(new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true));
}
