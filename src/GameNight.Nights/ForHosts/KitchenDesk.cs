using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.ForHosts;

/// <summary>What a host does with the kitchen, the doughs and the menu. A change replans the nights to come.</summary>
public sealed class KitchenDesk
{
    /// <summary>Whoever changes the kitchen in between is let through first, this often.</summary>
    private const int MostTries = 5;

    private readonly GroupSessions _sessions;
    private readonly ReplanRequests _replans;
    private readonly KitchenCheck _check;

    internal KitchenDesk(GroupSessions sessions, ReplanRequests replans, ReferenceTables tables)
    {
        _sessions = sessions;
        _replans = replans;
        _check = new KitchenCheck(tables);
    }

    public async Task<(KitchenFacts Facts, uint Version)> KitchenAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var kitchen = await session.Db.Kitchens.AsNoTracking().SingleAsync(cancellation);
        return (kitchen.Facts, kitchen.Version);
    }

    public async Task<SaveResult> SetKitchenAsync(
        GroupAccess access, KitchenFacts facts, uint version, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        if (_check.Problems(facts) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        return await ChangeAsync(
            access, session => session.Db.Kitchens.SingleOrDefaultAsync(cancellation), version,
            kitchen => kitchen.Set(facts), cancellation);
    }

    /// <summary>Whether past nights count in the forecasts of this group. Nights to come are planned anew.</summary>
    public async Task<SaveResult> LeavePastOutAsync(GroupAccess access, bool leaves, CancellationToken cancellation)
    {
        var (facts, version) = await KitchenAsync(access, cancellation);
        return await SetKitchenAsync(access, facts with { LeavesPastOut = leaves ? true : null }, version, cancellation);
    }

    public async Task<IReadOnlyList<DoughRecipe>> RecipesAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        return await session.Db.Recipes.AsNoTracking().OrderBy(recipe => recipe.Name).ToListAsync(cancellation);
    }

    /// <summary>Safe to repeat: the page makes the id.</summary>
    public async Task<SaveResult> AddRecipeAsync(
        GroupAccess access, FormulaId id, string name, DoughFormula formula, PieShape shape, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        if (_check.Problems(name, formula, shape) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (!await session.Db.Recipes.AnyAsync(row => row.Id == id, cancellation))
        {
            session.Db.Recipes.Add(new DoughRecipe(access.GroupId, id, name.Trim(), formula, shape));
            await session.CommitNewAsync(cancellation);
        }

        return new SaveResult.Saved();
    }

    public async Task<SaveResult> SetRecipeAsync(
        GroupAccess access, FormulaId id, string name, DoughFormula formula, PieShape shape, uint version,
        CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        if (_check.Problems(name, formula, shape) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        return await ChangeAsync(
            access, session => session.Db.Recipes.SingleOrDefaultAsync(recipe => recipe.Id == id, cancellation), version,
            recipe => recipe.Set(name.Trim(), formula, shape), cancellation);
    }

    public async Task<IReadOnlyList<PantryItem>> MenuAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        return await session.Db.MenuItems.AsNoTracking()
            .OrderBy(item => item.Role).ThenBy(item => item.Order).ToListAsync(cancellation);
    }

    /// <summary>Safe to repeat: the page makes the id.</summary>
    public async Task<SaveResult> AddMenuItemAsync(
        GroupAccess access, MenuItemId id, string name, MenuRole role, double gramsPerCm2, double? waterShare,
        Composition composition, PantryStock? stock, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (await session.Db.MenuItems.AnyAsync(item => item.Id == id, cancellation))
        {
            return new SaveResult.Saved();
        }

        var count = await session.Db.MenuItems.CountAsync(cancellation);
        if (KitchenCheck.Problems(name, gramsPerCm2, waterShare, stock, count + 1) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        var item = new PantryItem(access.GroupId, id, name.Trim(), role, gramsPerCm2, composition, count, waterShare);
        item.Keep(stock);
        session.Db.MenuItems.Add(item);
        await _replans.UpcomingNightsAsync(session, cancellation);
        await session.CommitNewAsync(cancellation);
        _replans.Wake();
        return new SaveResult.Saved();
    }

    public async Task<SaveResult> SetMenuItemAsync(
        GroupAccess access, MenuItemId id, string name, double gramsPerCm2, double? waterShare, Composition composition,
        PantryStock? stock, bool isOffered, uint version, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        if (KitchenCheck.Problems(name, gramsPerCm2, waterShare, stock, count: 1) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        return await ChangeAsync(
            access, session => session.Db.MenuItems.SingleOrDefaultAsync(item => item.Id == id, cancellation), version,
            item =>
            {
                item.Set(name.Trim(), gramsPerCm2, composition, waterShare, isOffered);
                item.Keep(stock);
            },
            cancellation);
    }

    /// <summary>How toppings go together here: a change of what is kept at that moment, so that two hosts do not undo each other.</summary>
    public async Task<SaveResult> SetHouseMenuAsync(
        GroupAccess access, Func<HouseMenu, HouseMenu> change, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        for (var tries = 1; ; tries++)
        {
            var (facts, version) = await KitchenAsync(access, cancellation);
            var house = change(facts.Menu ?? HouseMenu.Usual);
            var after = facts with { Menu = house.IsUsual ? null : house };
            if (_check.Problems(after) is { Count: > 0 } problems)
            {
                return new SaveResult.Refused(problems);
            }

            var result = await ChangeAsync(
                access, session => session.Db.Kitchens.SingleOrDefaultAsync(cancellation), version, kitchen => kitchen.Set(after), cancellation);
            if (result is not SaveResult.ChangedMeanwhile || tries == MostTries)
            {
                return result;
            }
        }
    }

    private async Task<SaveResult> ChangeAsync<T>(
        GroupAccess access, Func<GroupSession, Task<T?>> find, uint version, Action<T> change,
        CancellationToken cancellation)
        where T : class
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var record = await find(session);
        if (record is null)
        {
            return new SaveResult.Gone();
        }

        session.Db.Entry(record).Property("Version").OriginalValue = version;
        change(record);
        try
        {
            await _replans.UpcomingNightsAsync(session, cancellation);
            await session.CommitAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new SaveResult.ChangedMeanwhile();
        }

        _replans.Wake();
        return new SaveResult.Saved();
    }
}
