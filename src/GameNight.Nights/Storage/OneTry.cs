using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace GameNight.Nights.Storage;

/// <summary>
/// Runs every query and save once. A database that cannot be reached is told as <see cref="NightsUnavailableException"/>,
/// wherever it happens, so that pages need to know one exception only.
/// </summary>
internal sealed class OneTry(ExecutionStrategyDependencies dependencies) : IExecutionStrategy
{
    public bool RetriesOnFailure => false;

    public TResult Execute<TState, TResult>(
        TState state,
        Func<DbContext, TState, TResult> operation,
        Func<DbContext, TState, ExecutionResult<TResult>>? verifySucceeded)
    {
        try
        {
            return operation(dependencies.CurrentContext.Context, state);
        }
        catch (Exception fault) when (IsNews(fault))
        {
            throw new NightsUnavailableException(fault);
        }
    }

    public async Task<TResult> ExecuteAsync<TState, TResult>(
        TState state,
        Func<DbContext, TState, CancellationToken, Task<TResult>> operation,
        Func<DbContext, TState, CancellationToken, Task<ExecutionResult<TResult>>>? verifySucceeded,
        CancellationToken cancellationToken = default)
    {
        try
        {
            return await operation(dependencies.CurrentContext.Context, state, cancellationToken);
        }
        catch (Exception fault) when (IsNews(fault))
        {
            throw new NightsUnavailableException(fault);
        }
    }

    private static bool IsNews(Exception fault) =>
        fault is not NightsUnavailableException && NightsUnavailableException.IsMeantBy(fault);
}
