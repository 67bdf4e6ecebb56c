using NodaTime;

namespace GameNight.Web.Host.Print;

/// <summary>What stands at the head of every printed page.</summary>
/// <param name="MadeAt">When the plan was made.</param>
/// <param name="IsBeingRedone">The plan is about to be replaced: the paper says so.</param>
public sealed record PaperHead(string NightTitle, LocalDateTime ServeAt, string Zone, Instant? MadeAt, bool IsBeingRedone);
