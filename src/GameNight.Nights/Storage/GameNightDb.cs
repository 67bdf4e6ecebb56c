using GameNight.Nights.Records;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Storage;

/// <summary>
/// The database. Group data is only reached through a <see cref="GroupSession"/>: without a group set, row-level security
/// shows no row.
/// </summary>
internal sealed class GameNightDb(DbContextOptions<GameNightDb> options)
    : IdentityUserContext<HostAccount, Guid>(options)
{
    public DbSet<Group> Groups => Set<Group>();
    public DbSet<GroupMembership> Memberships => Set<GroupMembership>();
    public DbSet<KitchenSetup> Kitchens => Set<KitchenSetup>();
    public DbSet<DoughRecipe> Recipes => Set<DoughRecipe>();
    public DbSet<PantryItem> MenuItems => Set<PantryItem>();
    public DbSet<Guest> Guests => Set<Guest>();
    public DbSet<Night> Nights => Set<Night>();
    public DbSet<Invitation> Invitations => Set<Invitation>();
    public DbSet<Answer> Answers => Set<Answer>();
    public DbSet<DietaryNote> DietaryNotes => Set<DietaryNote>();
    public DbSet<SavedPlan> Plans => Set<SavedPlan>();
    public DbSet<CommittedDough> CommittedDoughs => Set<CommittedDough>();
    public DbSet<BakeLog> BakeLogs => Set<BakeLog>();
    public DbSet<LookBack> LookBacks => Set<LookBack>();
    public DbSet<RememberedWishes> RememberedWishes => Set<RememberedWishes>();
    public DbSet<HostInvitation> HostInvitations => Set<HostInvitation>();
    public DbSet<RecoveryCode> RecoveryCodes => Set<RecoveryCode>();
    public DbSet<Message> Messages => Set<Message>();
    public DbSet<WorkReminder> WorkReminders => Set<WorkReminder>();
    public DbSet<DateChoice> DateChoices => Set<DateChoice>();
    public DbSet<AskedGuest> AskedGuests => Set<AskedGuest>();
    public DbSet<LiveTap> LiveTaps => Set<LiveTap>();
    public DbSet<PostRow> PostQueue => Set<PostRow>();
    public DbSet<LinkRow> Links => Set<LinkRow>();
    public DbSet<ReplanRow> ReplanQueue => Set<ReplanRow>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        Conventions.Apply(configurationBuilder);

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(GameNightDb).Assembly);
        Conventions.SnakeCase(builder);
    }
}
