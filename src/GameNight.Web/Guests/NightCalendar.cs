using GameNight.Nights.ForGuests;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using Period = NodaTime.Period;

namespace GameNight.Web.Guests;

/// <summary>The night as a calendar file (RFC 5545). The same night and guest keep the same UID; no dietary word is in it.</summary>
internal static class NightCalendar
{
    private static readonly Period UsualLength = Period.FromHours(4);

    public static string Write(InvitationView invitation, Instant now)
    {
        var end = invitation.EndsAt ?? invitation.ServeAt + UsualLength;
        var calendar = new Calendar { ProductId = "-//GameNight//Night//EN", Method = "PUBLISH" };
        calendar.AddTimeZone(invitation.Zone, invitation.ServeAt.PlusYears(-1).ToDateTimeUnspecified(), false);
        calendar.Events.Add(new CalendarEvent
        {
            Uid = $"{invitation.Night}-{invitation.Guest}@gamenight",
            Sequence = Math.Max(0, invitation.Revision - 1) + invitation.CalendarSequence,
            Status = invitation.IsCancelled ? EventStatus.Cancelled : EventStatus.Confirmed,
            Summary = $"{invitation.Title} ({invitation.GroupName})",
            Location = invitation.Address,
            Start = new CalDateTime(invitation.ServeAt.ToDateTimeUnspecified(), invitation.Zone),
            End = new CalDateTime(end.ToDateTimeUnspecified(), invitation.Zone),
            DtStamp = new CalDateTime(now.ToDateTimeUtc(), "UTC"),
        });
        return new CalendarSerializer().SerializeToString(calendar)!;
    }
}
