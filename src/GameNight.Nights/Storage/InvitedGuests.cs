using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Storage;

/// <summary>An invitation with its guest, and with answer and notes where there are any.</summary>
internal sealed record InvitedRow(Invitation Invitation, Guest Guest, Answer? Answer, DietaryNote? Note);

internal static class InvitedGuests
{
    /// <summary>Everybody invited to a night, in one query; by guest id.</summary>
    public static IQueryable<InvitedRow> InvitedTo(this GameNightDb db, NightId night) =>
        from invitation in db.Invitations.AsNoTracking()
        where invitation.NightId == night
        join guest in db.Guests.AsNoTracking() on invitation.GuestId equals guest.Id
        join answer in db.Answers.AsNoTracking()
            on new { invitation.NightId, invitation.GuestId } equals new { answer.NightId, answer.GuestId } into answers
        from answer in answers.DefaultIfEmpty()
        join note in db.DietaryNotes.AsNoTracking()
            on new { invitation.NightId, invitation.GuestId } equals new { note.NightId, note.GuestId } into notes
        from note in notes.DefaultIfEmpty()
        orderby guest.Id
        select new InvitedRow(invitation, guest, answer, note);
}
