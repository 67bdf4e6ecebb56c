namespace GameNight.Web.Startup;

/// <summary>Asks the app on this machine whether it is ready, for containers, whose image holds no other program that could.</summary>
internal static class HealthProbe
{
    public const string Argument = "health";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <returns>0 when it is ready, else 1: an exit code.</returns>
    public static async Task<int> AskAsync()
    {
        var listening = Environment.GetEnvironmentVariable("ASPNETCORE_URLS")?.Split(';')[0] ?? GameNightOptions.DefaultUrls;
        foreach (var any in (string[])["+", "*", "[::]", "0.0.0.0"])
        {
            listening = listening.Replace($"//{any}", "//localhost", StringComparison.Ordinal);
        }

        using var client = new HttpClient { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(new Uri(new Uri(listening), "/health/ready"));
            Console.WriteLine(await answer.Content.ReadAsStringAsync());
            return answer.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception fault) when (fault is HttpRequestException or OperationCanceledException or UriFormatException)
        {
            Console.WriteLine(fault.Message);
            return 1;
        }
    }
}
