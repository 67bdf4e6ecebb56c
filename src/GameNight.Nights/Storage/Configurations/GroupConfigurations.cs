using GameNight.Nights.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GameNight.Nights.Storage.Configurations;

internal sealed class GroupConfiguration : IEntityTypeConfiguration<Group>
{
    public void Configure(EntityTypeBuilder<Group> builder)
    {
        builder.ToTable("groups");
        builder.HasKey(group => group.Id);
        builder.Property(group => group.Id).ValueGeneratedNever();
        builder.Property(group => group.Name).HasMaxLength(Group.LongestName);
        builder.Property(group => group.Zone).HasMaxLength(64);
        builder.Property(group => group.Rhythm).IsDocument();
    }
}

internal sealed class GroupMembershipConfiguration : IEntityTypeConfiguration<GroupMembership>
{
    public void Configure(EntityTypeBuilder<GroupMembership> builder)
    {
        builder.ToTable("memberships");
        builder.HasKey(membership => new { membership.GroupId, membership.HostId });
        builder.HasIndex(membership => membership.HostId);
        builder.HasOne<Group>().WithMany().HasForeignKey(membership => membership.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class HostAccountConfiguration : IEntityTypeConfiguration<HostAccount>
{
    public void Configure(EntityTypeBuilder<HostAccount> builder)
    {
        builder.ToTable("accounts");
        builder.Property(account => account.DisplayName).HasMaxLength(HostAccount.LongestName);
    }
}

internal sealed class AccountClaimConfiguration : IEntityTypeConfiguration<IdentityUserClaim<Guid>>
{
    public void Configure(EntityTypeBuilder<IdentityUserClaim<Guid>> builder) => builder.ToTable("account_claims");
}

internal sealed class AccountLoginConfiguration : IEntityTypeConfiguration<IdentityUserLogin<Guid>>
{
    public void Configure(EntityTypeBuilder<IdentityUserLogin<Guid>> builder) => builder.ToTable("account_logins");
}

internal sealed class AccountTokenConfiguration : IEntityTypeConfiguration<IdentityUserToken<Guid>>
{
    public void Configure(EntityTypeBuilder<IdentityUserToken<Guid>> builder) => builder.ToTable("account_tokens");
}

internal sealed class AccountPasskeyConfiguration : IEntityTypeConfiguration<IdentityUserPasskey<Guid>>
{
    /// <summary>
    /// What the identity services would configure themselves if their options were at hand wherever the model is made; the
    /// migration tool has none.
    /// </summary>
    public void Configure(EntityTypeBuilder<IdentityUserPasskey<Guid>> builder)
    {
        builder.ToTable("account_passkeys");
        builder.HasKey(passkey => passkey.CredentialId);
        builder.Property(passkey => passkey.CredentialId).HasMaxLength(1024);
        builder.OwnsOne(passkey => passkey.Data).ToJson("data");
        builder.HasOne<HostAccount>().WithMany().HasForeignKey(passkey => passkey.UserId).IsRequired();
    }
}

internal sealed class RecoveryCodeConfiguration : IEntityTypeConfiguration<RecoveryCode>
{
    public void Configure(EntityTypeBuilder<RecoveryCode> builder)
    {
        builder.ToTable("recovery_codes");
        builder.HasKey(code => new { code.AccountId, code.CodeHash });
        builder.Property(code => code.CodeHash).HasMaxLength(32);
        builder.HasOne<HostAccount>().WithMany().HasForeignKey(code => code.AccountId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class HostInvitationConfiguration : IEntityTypeConfiguration<HostInvitation>
{
    public void Configure(EntityTypeBuilder<HostInvitation> builder)
    {
        builder.ToTable("host_invitations");
        builder.HasKey(invitation => new { invitation.GroupId, invitation.Id });
        builder.Property(invitation => invitation.ForName).HasMaxLength(HostAccount.LongestName);
        builder.HasOne<Group>().WithMany().HasForeignKey(invitation => invitation.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class KitchenConfiguration : IEntityTypeConfiguration<KitchenSetup>
{
    public void Configure(EntityTypeBuilder<KitchenSetup> builder)
    {
        builder.ToTable("kitchens");
        builder.HasKey(kitchen => kitchen.GroupId);
        builder.Property(kitchen => kitchen.Facts).IsDocument();
        builder.IsRowVersioned();
        builder.HasOne<Group>().WithMany().HasForeignKey(kitchen => kitchen.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class DoughRecipeConfiguration : IEntityTypeConfiguration<DoughRecipe>
{
    public void Configure(EntityTypeBuilder<DoughRecipe> builder)
    {
        builder.ToTable("dough_recipes");
        builder.HasKey(recipe => new { recipe.GroupId, recipe.Id });
        builder.Property(recipe => recipe.Name).HasMaxLength(DoughRecipe.LongestName);
        builder.Property(recipe => recipe.Formula).IsDocument();
        builder.Property(recipe => recipe.Shape).IsDocument();
        builder.IsRowVersioned();
        builder.HasOne<Group>().WithMany().HasForeignKey(recipe => recipe.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class PantryItemConfiguration : IEntityTypeConfiguration<PantryItem>
{
    public void Configure(EntityTypeBuilder<PantryItem> builder)
    {
        builder.ToTable("menu_items", table => table.HasCheckConstraint("ck_menu_items_mass", "grams_per_cm2 between 0 and 1"));
        builder.HasKey(item => new { item.GroupId, item.Id });
        builder.Property(item => item.Name).HasMaxLength(PantryItem.LongestName);
        builder.Property(item => item.Composition).IsDocument();
        builder.Property(item => item.Stock).IsDocument();
        builder.IsRowVersioned();
        builder.HasOne<Group>().WithMany().HasForeignKey(item => item.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class GuestConfiguration : IEntityTypeConfiguration<Guest>
{
    public void Configure(EntityTypeBuilder<Guest> builder)
    {
        builder.ToTable("guests");
        builder.HasKey(guest => new { guest.GroupId, guest.Id });
        builder.Property(guest => guest.Name).HasMaxLength(Guest.LongestName);
        builder.Property(guest => guest.Household).HasMaxLength(Guest.LongestHousehold);
        builder.Property(guest => guest.IsOneOff).HasDefaultValue(false);
        builder.Property(guest => guest.Contact).IsDocument();
        builder.Property(guest => guest.FeedGeneration).HasDefaultValue(0);
        builder.Ignore(guest => guest.TakesMail);
        builder.HasOne<Group>().WithMany().HasForeignKey(guest => guest.GroupId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class RememberedWishesConfiguration : IEntityTypeConfiguration<RememberedWishes>
{
    public void Configure(EntityTypeBuilder<RememberedWishes> builder)
    {
        builder.ToTable("remembered_wishes");
        builder.HasKey(wishes => new { wishes.GroupId, wishes.GuestId });
        builder.Property(wishes => wishes.Facts).IsDocument();
        builder.HasOne<Guest>().WithOne()
            .HasForeignKey<RememberedWishes>(wishes => new { wishes.GroupId, wishes.GuestId }).OnDelete(DeleteBehavior.Cascade);
    }
}
