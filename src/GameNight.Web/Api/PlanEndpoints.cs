using System.Collections.Concurrent;
using System.Net;
using System.Text.Json;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Web.SignIn;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace GameNight.Web.Api;

/// <summary>A night to plan.</summary>
/// <param name="Now">Steps cannot start before it.</param>
/// <param name="Effort">Slices of solver time, 0 (the quick plan) to 40.</param>
public sealed record PlanRequest(NightSnapshot Night, Instant Now, int Effort = 0);

/// <summary>Plans a night without keeping anything: <c>POST /api/plans</c>.</summary>
internal static class PlanEndpoints
{
    private const long LargestBody = 512 * 1024;
    private const int MostEffort = 40;

    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(60);

    /// <summary>Callers whose plan is being solved: one at a time each.</summary>
    private static readonly ConcurrentDictionary<string, bool> Busy = new();

    public static void AddPlanApi(this IServiceCollection services)
    {
        services.ConfigureHttpJsonOptions(json => PlanJson.Configure(json.SerializerOptions));
        services.AddOpenApi("v1", PlanDocument.Describe);
    }

    public static void MapPlanApi(this IEndpointRouteBuilder routes) => routes
        .MapPost("/api/plans", PlanAsync)
        .WithName("planNight")
        .WithTags("plans")
        .WithSummary("Plan a night")
        .WithDescription(
            "Turns a snapshot of a night into a plan: pies, dough, sauce, cheese, topping split, timeline, yeast dose, "
            + "cautions and conflicts. Stateless: nothing is kept or logged. From this machine without sign-in; from others for "
            + "signed-in hosts. One plan at a time for each caller.")
        .Accepts<PlanRequest>("application/json")
        .Produces<NightPlan>()
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status401Unauthorized)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
        .ProducesProblem(StatusCodes.Status429TooManyRequests)
        .ProducesProblem(StatusCodes.Status503ServiceUnavailable)
        .RequireRateLimiting(RateLimits.Api)
        .DisableAntiforgery();

    private static async Task<IResult> PlanAsync(HttpContext context, NightPlanner planner, CancellationToken cancellation)
    {
        if (CallerOf(context) is not { } caller)
        {
            return Problem(StatusCodes.Status401Unauthorized, "Sign in first", "From other machines only signed-in hosts may plan.");
        }

        var (request, refusal) = await ReadAsync(context, cancellation);
        if (request is null)
        {
            return refusal!;
        }

        if (request.Effort is < 0 or > MostEffort)
        {
            return Invalid([("effort", ProblemText.Say(new SnapshotProblem("effort", SnapshotFault.OutOfRange, request.Effort, 0, MostEffort)))]);
        }

        if (new SnapshotCheck(planner.Tables).Problems(request.Night, request.Now) is { Count: > 0 } problems)
        {
            return Invalid([.. problems.Select(problem => ($"night.{problem.Field}", ProblemText.Say(problem)))]);
        }

        return await SolveAsync(caller, planner, request, context, cancellation);
    }

    private static async Task<IResult> SolveAsync(
        string caller, NightPlanner planner, PlanRequest request, HttpContext context, CancellationToken cancellation)
    {
        if (!Busy.TryAdd(caller, true))
        {
            context.Response.Headers.RetryAfter = "2";
            return Problem(StatusCodes.Status429TooManyRequests, "One at a time", "Your last plan is still being made. Wait for it, then ask again.");
        }

        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        deadline.CancelAfter(Deadline);
        try
        {
            var plan = await Task.Run(
                () => planner.Plan(request.Night, request.Now, new Effort(request.Effort), cancellation: deadline.Token),
                deadline.Token);
            return TypedResults.Json(plan, PlanJson.Options);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return Problem(StatusCodes.Status503ServiceUnavailable, "Too long", "The plan was not ready in time. Ask for less effort.");
        }
        finally
        {
            Busy.TryRemove(caller, out _);
        }
    }

    private static async Task<(PlanRequest? Request, IResult? Refusal)> ReadAsync(HttpContext context, CancellationToken cancellation)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = LargestBody;
        }

        try
        {
            var request = await JsonSerializer.DeserializeAsync<PlanRequest>(
                context.Request.Body, PlanJson.Options, cancellation);
            return request is null ? (null, Invalid([("", "A plan request is needed, not null.")])) : (request, null);
        }
        catch (JsonException problem)
        {
            return (null, Invalid([(FieldOf(problem), Sentence(problem))]));
        }
        catch (BadHttpRequestException)
        {
            return (null, Problem(StatusCodes.Status413PayloadTooLarge, "Too large", $"A plan request has at most {LargestBody / 1024} kB."));
        }
    }

    /// <summary>The path in the words of the snapshot's own check: "night.kitchen.roomCelsius".</summary>
    private static string FieldOf(JsonException problem) => problem.Path?.TrimStart('$').TrimStart('.') ?? "";

    /// <summary>Our own sentences as they are; those of the serializer would name our types.</summary>
    private static string Sentence(JsonException problem) =>
        problem.InnerException is ArgumentException inner ? ProblemText.WithReason(ProblemText.Say(inner), FieldOf(problem))
        : !problem.Message.Contains(" | LineNumber: ", StringComparison.Ordinal)
            && !problem.Message.Contains(" type '", StringComparison.Ordinal) ? problem.Message
        : FieldOf(problem) is { Length: > 0 } named && RequestWords.Of(named) is { Count: > 0 } words ? $"{named} can be one of: {string.Join(", ", words)}."
        : FieldOf(problem) is { Length: > 0 } field ? $"{field} cannot be read: it is unknown, lacks a part, or is not of its kind."
        : "This is no plan request: it is not JSON, or it lacks a part.";

    private static string? CallerOf(HttpContext context)
    {
        if (context.User.HostIdOf() is { } host)
        {
            return host.ToString();
        }

        // Behind a proxy on this machine every request looks local: then only signed-in hosts count.
        var isLocal = context.Connection.RemoteIpAddress is { } address && IPAddress.IsLoopback(address)
            && !context.Request.Headers.ContainsKey("X-Forwarded-For");
        return isLocal ? "local" : null;
    }

    private static JsonHttpResult<HttpValidationProblemDetails> Invalid(IReadOnlyList<(string Field, string Sentence)> problems) =>
        TypedResults.Json(
            new HttpValidationProblemDetails(problems.GroupBy(problem => problem.Field)
                .ToDictionary(group => group.Key, group => group.Select(problem => problem.Sentence).ToArray()))
            {
                Title = "The night cannot be planned like this",
                Detail = problems[0].Sentence,
                Status = StatusCodes.Status400BadRequest,
            },
            statusCode: StatusCodes.Status400BadRequest,
            contentType: "application/problem+json",
            options: JsonSerializerOptions.Web);

    private static ProblemHttpResult Problem(int status, string title, string detail) =>
        TypedResults.Problem(new ProblemDetails { Status = status, Title = title, Detail = detail });
}
