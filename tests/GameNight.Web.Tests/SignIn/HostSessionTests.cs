using System.Net;
using System.Security.Claims;
using GameNight.Web.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;

namespace GameNight.Web.Tests.SignIn;

/// <summary>The cookie of a sign-in under a clock that is turned by hand.</summary>
public sealed class HostSessionTests : IAsyncDisposable
{
    private const string Scheme = "test";

    private readonly Clock _clock = new();
    private readonly WebApplication _app;
    private string _cookie = "";

    public HostSessionTests()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseTestServer();
        builder.Services.AddSingleton<IDataProtectionProvider>(new EphemeralDataProtectionProvider());
        builder.Services.Replace(ServiceDescriptor.Singleton<TimeProvider>(_clock));
        builder.Services.AddAuthentication(IdentityConstants.ApplicationScheme).AddCookie(IdentityConstants.ApplicationScheme, HostSession.Limit);
        builder.Services.AddAuthorization();
        _app = builder.Build();
        _app.UseAuthentication();
        _app.UseAuthorization();
        _app.MapGet("/in", context => context.SignInAsync(
            IdentityConstants.ApplicationScheme,
            new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.Name, "Hana")], Scheme)),
            new AuthenticationProperties { IsPersistent = true }));
        _app.MapGet("/prove", async context =>
        {
            var ticket = (await context.AuthenticateAsync()).Properties!;
            HostSession.Prove(ticket, HostSession.Now(context));
            await context.SignInAsync(context.User, ticket);
        });
        _app.MapGet("/page", () => "open").RequireAuthorization();
        _app.MapGet("/hard-to-undo", () => "open").RequireAuthorization().RequireFreshSignIn();
        _app.MapPost("/hard-to-undo/now", () => "done").RequireAuthorization().RequireFreshSignIn("/hard-to-undo");
        _app.Start();
    }

    [Fact]
    public async Task A_sign_in_that_is_not_used_for_14_days_ends()
    {
        await GoAsync("/in");

        _clock.Turn(TimeSpan.FromDays(13));
        Assert.True(await IsOpenAsync());
        _clock.Turn(TimeSpan.FromDays(13));
        Assert.True(await IsOpenAsync());
        _clock.Turn(TimeSpan.FromDays(14.1));
        Assert.False(await IsOpenAsync());
    }

    [Fact]
    public async Task A_sign_in_ends_after_90_days_however_much_it_is_used_and_confirmed()
    {
        await GoAsync("/in");
        for (var day = 1; day < 90; day++)
        {
            _clock.Turn(TimeSpan.FromDays(1));
            Assert.True(await IsOpenAsync(), $"It ended on day {day}.");
            await GoAsync("/prove");
        }

        _clock.Turn(TimeSpan.FromDays(1));

        Assert.False(await IsOpenAsync());
    }

    [Fact]
    public async Task What_is_hard_to_undo_needs_a_proof_no_older_than_ten_minutes_and_leads_back()
    {
        await GoAsync("/in");
        _clock.Turn(TimeSpan.FromMinutes(10));
        Assert.Equal(HttpStatusCode.OK, (await GoAsync("/hard-to-undo?of=2")).StatusCode);

        _clock.Turn(TimeSpan.FromSeconds(1));
        var page = await GoAsync("/hard-to-undo?of=2");
        var form = await GoAsync("/hard-to-undo/now", HttpMethod.Post);

        Assert.Equal("/confirm?to=%2Fhard-to-undo%3Fof%3D2", page.Headers.Location!.ToString());
        Assert.Equal("/confirm?to=%2Fhard-to-undo", form.Headers.Location!.ToString());
        Assert.True(await IsOpenAsync());

        await GoAsync("/prove");

        Assert.Equal(HttpStatusCode.OK, (await GoAsync("/hard-to-undo?of=2")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await GoAsync("/hard-to-undo/now", HttpMethod.Post)).StatusCode);
    }

    [Fact]
    public async Task Showing_again_who_one_is_changes_the_cookie()
    {
        await GoAsync("/in");
        var before = _cookie;

        await GoAsync("/prove");

        Assert.NotEqual(before, _cookie);
    }

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();

    private async Task<bool> IsOpenAsync() => (await GoAsync("/page")).StatusCode == HttpStatusCode.OK;

    private async Task<HttpResponseMessage> GoAsync(string path, HttpMethod? method = null)
    {
        using var request = new HttpRequestMessage(method ?? HttpMethod.Get, path);
        if (_cookie.Length > 0)
        {
            request.Headers.Add("Cookie", _cookie);
        }

        var answer = await _app.GetTestClient().SendAsync(request, TestContext.Current.CancellationToken);
        if (answer.Headers.TryGetValues("Set-Cookie", out var cookies))
        {
            _cookie = cookies.Last().Split(';')[0];
        }

        return answer;
    }

    private sealed class Clock : TimeProvider
    {
        private DateTimeOffset _now = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => _now;

        public void Turn(TimeSpan by) => _now += by;
    }
}
