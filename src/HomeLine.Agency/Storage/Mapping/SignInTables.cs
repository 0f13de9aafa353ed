using HomeLine.Agency.Access;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage.Mapping;

/// <summary>The sign-in framework's own tables under names that say what they hold.</summary>
internal static class SignInTables
{
    public static void Name(ModelBuilder model)
    {
        model.Entity<Account>().ToTable("accounts");
        model.Entity<IdentityRole>().ToTable("roles");
        model.Entity<IdentityUserRole<string>>().ToTable("account_roles");
        model.Entity<IdentityUserClaim<string>>().ToTable("account_claims");
        model.Entity<IdentityRoleClaim<string>>().ToTable("role_claims");
        model.Entity<IdentityUserLogin<string>>().ToTable("account_logins");
        model.Entity<IdentityUserToken<string>>().ToTable("account_tokens");
        model.Entity<IdentityUserPasskey<string>>().ToTable("account_passkeys");
        model.Entity<DataProtectionKey>().ToTable("data_protection_keys");
    }
}
