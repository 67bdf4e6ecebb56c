using System.Collections.Concurrent;
using GameNight.Nights.Messages;

namespace GameNight.Nights.Tests.Messages;

/// <summary>Takes every message and notes it, unless it is told what to say.</summary>
internal sealed class NotingCarrier : IMessageCarrier
{
    private readonly ConcurrentQueue<Letter> _letters = new();
    private readonly ConcurrentQueue<QuestionLetter> _questions = new();
    private readonly ConcurrentQueue<WorkLetter> _works = new();

    public bool CanCarry { get; set; } = true;

    public Func<Letter, Task<CarryResult>>? Says { get; set; }

    /// <summary>Everything it was handed, taken or not.</summary>
    public IReadOnlyList<Letter> Letters => [.. _letters];

    public IReadOnlyList<QuestionLetter> Questions => [.. _questions];

    public IReadOnlyList<WorkLetter> Works => [.. _works];

    /// <summary>What it says to questions for a date.</summary>
    public CarryResult ToQuestions { get; set; } = new CarryResult.Accepted();

    /// <summary>What it says to reminders of work.</summary>
    public CarryResult ToWork { get; set; } = new CarryResult.Accepted();

    public Task<CarryResult> CarryAsync(QuestionLetter letter, CancellationToken cancellation)
    {
        _questions.Enqueue(letter);
        return Task.FromResult(ToQuestions);
    }

    public Task<CarryResult> CarryAsync(WorkLetter letter, CancellationToken cancellation)
    {
        _works.Enqueue(letter);
        return Task.FromResult(ToWork);
    }

    public async Task<CarryResult> CarryAsync(Letter letter, CancellationToken cancellation)
    {
        _letters.Enqueue(letter);
        return Says is null ? new CarryResult.Accepted() : await Says(letter);
    }
}
