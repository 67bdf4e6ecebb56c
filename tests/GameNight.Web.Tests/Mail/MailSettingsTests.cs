using GameNight.Web.Mail;
using GameNight.Web.Startup;
using MailKit.Security;

namespace GameNight.Web.Tests.Mail;

public sealed class MailSettingsTests : IDisposable
{
    private readonly string _password = Path.GetTempFileName();

    [Fact]
    public void Nothing_set_is_no_mail() => Assert.Null(MailSettings.Of(new GameNightOptions()));

    [Fact]
    public void A_server_with_everything_is_taken_as_it_is()
    {
        File.WriteAllText(_password, "between us\n");

        var settings = MailSettings.Of(Options(["smtp_user=night", $"smtp_password_file={_password}"]))!;

        Assert.Empty(MailSettings.Problems(Options(["smtp_user=night", $"smtp_password_file={_password}"])));
        Assert.Equal(
            ("mail.example.org", 465, SecureSocketOptions.SslOnConnect, "night", "between us", "night@example.org"),
            (settings.Host, settings.Port, settings.Security, settings.User, settings.Password, settings.From.Address));
        Assert.Equal(587, MailSettings.Of(Options(["smtp_tls=start"]))!.Port);
    }

    [Theory]
    [InlineData("smtp_tls=none", "GAMENIGHT_SMTP_TLS is none, but mail.example.org is not this machine")]
    [InlineData("smtp_tls=auto", "GAMENIGHT_SMTP_TLS is auto")]
    [InlineData("smtp_port=0", "GAMENIGHT_SMTP_PORT is 0")]
    [InlineData("smtp_port=70000", "GAMENIGHT_SMTP_PORT is 70000")]
    [InlineData("smtp_from=nobody", "GAMENIGHT_SMTP_FROM is no address")]
    [InlineData("smtp_user=night", "GAMENIGHT_SMTP_USER is set, but GAMENIGHT_SMTP_PASSWORD_FILE names no file")]
    [InlineData("public_address=", "GAMENIGHT_SMTP_HOST is set, so GAMENIGHT_PUBLIC_ADDRESS must be too")]
    public void What_cannot_be_used_is_said_with_the_setting_to_fix(string setting, string beginning) =>
        Assert.StartsWith(beginning, Assert.Single(MailSettings.Problems(Options([setting]))), StringComparison.Ordinal);

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("::1")]
    public void On_this_machine_mail_may_go_unencrypted(string host) =>
        Assert.Empty(MailSettings.Problems(Options([$"smtp_host={host}", "smtp_tls=none"])));

    public void Dispose() => File.Delete(_password);

    private static GameNightOptions Options(string[] settings) => GameNightOptions.Read([
        .. new[] { "smtp_host=mail.example.org", "smtp_from=GameNight <night@example.org>", "public_address=https://night.example" }
            .Where(usual => !settings.Any(setting => setting.StartsWith(usual.Split('=')[0], StringComparison.Ordinal)))
            .Concat(settings).Select(setting => $"--{setting}")]);
}
