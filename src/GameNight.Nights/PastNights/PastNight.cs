using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.PastNights;

/// <summary>Somebody who was invited, with their answer where there is one.</summary>
internal sealed record Invitee(Invitation Invitation, Guest Guest, Answer? Answer);

/// <summary>Everything that is kept of a night, joined.</summary>
internal sealed record PastNight(
    Night Night, IReadOnlyList<Invitee> Invited, BakeLog? Log, IReadOnlyList<LookBack> LookBacks, NightPies Pies,
    SlicesAccount Slices)
{
    public int People => Invited.Sum(row => Attendance.Heads(row.Guest, row.Answer?.Counted, Log?.Facts));

    public Opinions Opinions => Opinions.Of(LookBacks.Select(row => row.Facts), Pies);

    /// <summary>What the host saw win.</summary>
    public IReadOnlyList<PieKind> Won => [.. (Log?.Facts.Pies ?? []).Where(pie => pie.Won)
        .Select(pie => Pies.KindOf(pie.Number)).OfType<PieKind>().Distinct()];

    public static bool IsServed(Night night, Instant now) => ServedAt(night) <= now && night.CancelledAt is null;

    public static Instant ServedAt(Night night) => NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone);

    /// <summary>The nights with these ids, in their order; notes are left alone.</summary>
    public static async Task<IReadOnlyList<PastNight>> LoadAsync(
        GameNightDb db, IReadOnlyList<Night> nights, CancellationToken cancellation)
    {
        var ids = nights.Select(night => night.Id).ToList();
        var invited = (await InviteesAsync(db, ids, cancellation)).ToLookup(row => row.Invitation.NightId);
        var logs = await db.BakeLogs.AsNoTracking().Where(row => ids.Contains(row.NightId))
            .ToDictionaryAsync(row => row.NightId, cancellation);
        var lookBacks = (await db.LookBacks.AsNoTracking().Where(row => ids.Contains(row.NightId)).ToListAsync(cancellation))
            .ToLookup(row => row.NightId);
        var plans = await db.Plans.AsNoTracking().Where(row => ids.Contains(row.NightId))
            .ToDictionaryAsync(row => row.NightId, cancellation);
        var recipes = await db.Recipes.AsNoTracking().ToDictionaryAsync(row => row.Id, cancellation);
        var menu = await db.MenuItems.AsNoTracking().ToListAsync(cancellation);
        return [.. nights.Select(night =>
        {
            var plan = plans.TryGetValue(night.Id, out var saved) ? PlanBook.Read(saved) : null;
            var log = logs.GetValueOrDefault(night.Id);
            return new PastNight(
                night,
                [.. invited[night.Id]],
                log,
                [.. lookBacks[night.Id]],
                NightPies.Of(plan, menu),
                SlicesAccount.Of(plan, recipes[night.Facts.Formula].Shape.SlicesPerPie, log?.Facts));
        })];
    }

    private static Task<List<Invitee>> InviteesAsync(GameNightDb db, List<NightId> nights, CancellationToken cancellation) =>
        (from invitation in db.Invitations.AsNoTracking()
         where nights.Contains(invitation.NightId)
         join guest in db.Guests.AsNoTracking() on invitation.GuestId equals guest.Id
         join answer in db.Answers.AsNoTracking()
             on new { invitation.NightId, invitation.GuestId } equals new { answer.NightId, answer.GuestId } into answers
         from answer in answers.DefaultIfEmpty()
         orderby guest.Id
         select new Invitee(invitation, guest, answer)).ToListAsync(cancellation);
}
