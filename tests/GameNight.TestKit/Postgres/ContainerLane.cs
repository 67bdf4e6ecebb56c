using Docker.DotNet;
using DotNet.Testcontainers.Configurations;
using DotNet.Testcontainers.Images;
using Testcontainers.PostgreSql;

namespace GameNight.TestKit.Postgres;

/// <summary>
/// A Postgres in a container, for the tests that also run on the image used in production. It is there only where a
/// container engine answers and the image is at hand already: tests download no images.
/// </summary>
public abstract record ContainerLane
{
    /// <summary>The image that deployments use, pinned to its major version.</summary>
    public const string Image = "postgres:17-alpine";

    private static readonly TimeSpan AnswerWithin = TimeSpan.FromSeconds(5);

    public static async Task<ContainerLane> StartAsync(CancellationToken cancellation)
    {
        if (await WhyNotAsync(cancellation) is { } reason)
        {
            return new ContainerLaneClosed(reason);
        }

        var container = new PostgreSqlBuilder(Image)
            .WithImagePullPolicy(PullPolicy.Never)
            .Build();
        await container.StartAsync(cancellation);
        return new ContainerLaneOpen(container);
    }

    private static async Task<bool> IsAtHandAsync(DockerClient engine, string image, CancellationToken cancellation)
    {
        try
        {
            await engine.Images.InspectImageAsync(image, cancellation);
            return true;
        }
        catch (DockerImageNotFoundException)
        {
            return false;
        }
    }

    private static async Task<string?> WhyNotAsync(CancellationToken cancellation)
    {
        if (TestcontainersSettings.OS.DockerEndpointAuthConfig is not { } endpoint)
        {
            return "Container lane skipped: no container engine answers on this machine.";
        }

        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        deadline.CancelAfter(AnswerWithin);
        try
        {
            using var engine = endpoint.GetDockerClientBuilder(Guid.Empty).Build();
            if (!await IsAtHandAsync(engine, Image, deadline.Token))
            {
                return $"Container lane skipped: the image {Image} is not on this machine (docker pull {Image}).";
            }

            // The helper that removes what a killed test process leaves is an image too, and no reason to go without.
            TestcontainersSettings.ResourceReaperEnabled &=
                await IsAtHandAsync(engine, TestcontainersSettings.ResourceReaperImage.FullName, deadline.Token);
            return null;
        }
        catch (Exception silent) when (silent is DockerApiException or HttpRequestException or IOException
            or TimeoutException or OperationCanceledException)
        {
            cancellation.ThrowIfCancellationRequested();
            return $"Container lane skipped: the container engine does not answer ({silent.Message.TrimEnd('.')}).";
        }
    }
}

/// <summary>The container runs; dispose it after the tests.</summary>
public sealed record ContainerLaneOpen : ContainerLane, IAsyncDisposable
{
    private readonly PostgreSqlContainer _container;

    internal ContainerLaneOpen(PostgreSqlContainer container)
    {
        _container = container;
    }

    /// <summary>The superuser, for <see cref="TestPostgres.On"/>.</summary>
    public string AdminConnectionString => _container.GetConnectionString();

    public ValueTask DisposeAsync()
    {
        return _container.DisposeAsync();
    }
}

/// <summary>There is none, and why: the text to skip with.</summary>
public sealed record ContainerLaneClosed(string Reason) : ContainerLane;
