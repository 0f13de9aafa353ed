using HomeLine.Agency.Storage;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Access;

/// <summary>Registers accounts with the rules of this agency in place of the framework's defaults.</summary>
internal static class AccountRegistration
{
    public static void AddAgencyAccounts(this IServiceCollection services)
    {
        services.AddIdentityCore<Account>(Rules)
            .AddRoles<IdentityRole>()
            .AddEntityFrameworkStores<AgencyDb>()
            .AddUserManager<GrowingLockout>()
            .AddUserConfirmation<AccountStanding>()
            .AddPasswordValidator<PasswordRule>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<AccountClaims>()
            .AddDefaultTokenProviders();
        // PBKDF2 with HMAC-SHA-512; rounds from the OWASP password storage cheat sheet.
        services.Configure<PasswordHasherOptions>(options => options.IterationCount = 220_000);
        services.Configure<SecurityStampValidatorOptions>(options => options.ValidationInterval = SessionStanding.AsksEvery);
        services.Configure<DataProtectionTokenProviderOptions>(options => options.TokenLifespan = TimeSpan.FromHours(1));
        services.AddDataProtection().SetApplicationName("HomeLine").PersistKeysToDbContext<AgencyDb>();
        services.AddSingleton<FirstRun>();
        services.AddSingleton<Accounts>();
        services.AddSingleton<SessionStanding>();
    }

    private static void Rules(IdentityOptions options)
    {
        options.Stores.SchemaVersion = AgencyDb.SignInSchema;
        options.User.RequireUniqueEmail = true;
        options.SignIn.RequireConfirmedAccount = true;
        options.Lockout.AllowedForNewUsers = true;
        options.Lockout.MaxFailedAccessAttempts = GrowingLockout.Failures;
        // PasswordRule alone decides; the framework's rule, which asks for kinds of characters, is switched off.
        options.Password.RequiredLength = 1;
        options.Password.RequireDigit = false;
        options.Password.RequireLowercase = false;
        options.Password.RequireUppercase = false;
        options.Password.RequireNonAlphanumeric = false;
        options.Password.RequiredUniqueChars = 1;
    }
}
