using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>A group as its host sees it in a list.</summary>
public sealed record GroupLine(GroupId Id, string Name, string Zone, HostRole Role);

/// <summary>Who belongs to which group. Membership is read anew at every entrance.</summary>
public sealed class GroupDesk
{
    private readonly GroupSessions _sessions;
    private readonly ReferenceTables _tables;

    internal GroupDesk(GroupSessions sessions, ReferenceTables tables)
    {
        _sessions = sessions;
        _tables = tables;
    }

    public async Task<IReadOnlyList<GroupLine>> GroupsOfAsync(HostId host, CancellationToken cancellation)
    {
        var memberships = await _sessions.MembershipsOfAsync(host, cancellation);
        var groups = new List<GroupLine>();
        foreach (var membership in memberships.OrderBy(membership => membership.GroupId.Value))
        {
            await using var session = await _sessions.OpenAsync(
                new GroupAccess(membership.GroupId, host, membership.Role, membership.SeesNotes), cancellation);
            var group = await session.Db.Groups.AsNoTracking().SingleAsync(cancellation);
            groups.Add(new GroupLine(group.Id, group.Name, group.Zone, membership.Role));
        }

        return groups;
    }

    /// <returns>Null when the host does not belong to the group (or it does not exist: no difference is told).</returns>
    public async Task<GroupAccess?> EnterAsync(HostId host, GroupId group, CancellationToken cancellation)
    {
        var memberships = await _sessions.MembershipsOfAsync(host, cancellation);
        var membership = memberships.SingleOrDefault(row => row.GroupId == group);
        return membership is null ? null : new GroupAccess(group, host, membership.Role, membership.SeesNotes);
    }

    /// <summary>
    /// A new group with its first host, who is an eater too, a kitchen, our starting doughs and a starting menu.
    /// </summary>
    public async Task<GroupId> FoundAsync(
        HostId host, string hostName, string groupName, string zone, CancellationToken cancellation)
    {
        var id = GroupId.New();
        await using var session = await _sessions.OpenAsync(new GroupAccess(id, host, HostRole.Owner, seesNotes: true), cancellation);
        session.Db.Groups.Add(new Group(id, groupName, zone));
        session.Db.Memberships.Add(new GroupMembership(id, host, HostRole.Owner, seesNotes: true));
        session.Db.Kitchens.Add(new KitchenSetup(id, KitchenFacts.Starting));
        session.Db.Guests.Add(new Guest(id, GuestId.New(), hostName, PortionClass.Adult, host));
        session.Db.Recipes.AddRange(_tables.Dough.Styles
            .Where(style => style.Ferment == "cold")
            .Select(style => StartingRecipe(id, style)));
        session.Db.MenuItems.AddRange(_tables.Menu.Items.Select((item, index) => new PantryItem(
            id, MenuItemId.New(), item.Name, item.Role, item.GramsPerCm2, item.Composition, index, item.WaterShare)));
        await session.CommitAsync(cancellation);
        return id;
    }

    private DoughRecipe StartingRecipe(GroupId group, StyleRow style) => new(
        group,
        FormulaId.New(),
        StyleNames.Of(style.Id),
        new DoughFormula(
            new Share(style.Water),
            new Share(style.Salt),
            new Share(style.Oil),
            new Share(style.Sugar),
            SugarIsHoney: false,
            YeastForm.Instant,
            new Share(_tables.Dough.HeldBackFlour.Share),
            new Share(_tables.Dough.Loss.Share)),
        new PieShape(
            new Centimetres(style.DiameterCentimetres),
            style.ThicknessGramsPerCm2,
            new Centimetres(style.RimCentimetres),
            new Centimetres(style.SauceInsetCentimetres),
            new Centimetres(style.CheeseInsetCentimetres),
            style.SlicesPerPie,
            style.OilInsetCentimetres is { } oil ? new Centimetres(oil) : null));
}
