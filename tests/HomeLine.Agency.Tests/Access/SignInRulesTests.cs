using HomeLine.Agency.Tests.Storage;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace HomeLine.Agency.Tests.Access;

/// <summary>Cookie flags: OWASP ASVS 5.0.0, 3.3.1 to 3.3.4. Rounds of the password hash: OWASP password storage cheat sheet. Times are our own defaults.</summary>
public sealed class SignInRulesTests(PostgresCluster cluster)
{
    [Fact]
    public async Task The_session_cookie_is_bound_to_its_host_and_ends_when_nobody_is_there()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        CookieAuthenticationOptions cookie = agency.Services
            .GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(IdentityConstants.ApplicationScheme);
        Assert.Equal("__Host-homeline", cookie.Cookie.Name);
        Assert.Equal(CookieSecurePolicy.Always, cookie.Cookie.SecurePolicy);
        Assert.True(cookie.Cookie.HttpOnly);
        Assert.Equal(SameSiteMode.Lax, cookie.Cookie.SameSite);
        Assert.Null(cookie.Cookie.Domain);
        Assert.Equal((TimeSpan.FromMinutes(15), true), (cookie.ExpireTimeSpan, cookie.SlidingExpiration));
    }

    [Fact]
    public async Task Accounts_follow_our_rules_and_not_the_defaults_of_the_framework()
    {
        await using TestAgency agency = await TestAgency.OnAsync(Provider.Sqlite, cluster);
        IdentityOptions rules = agency.Services.GetRequiredService<IOptions<IdentityOptions>>().Value;
        Assert.Equal(5, rules.Lockout.MaxFailedAccessAttempts);
        Assert.False(rules.Password.RequireDigit || rules.Password.RequireUppercase || rules.Password.RequireNonAlphanumeric);
        Assert.Equal(220_000, agency.Services.GetRequiredService<IOptions<PasswordHasherOptions>>().Value.IterationCount);
        Assert.Equal(
            TimeSpan.FromSeconds(60),
            agency.Services.GetRequiredService<IOptions<SecurityStampValidatorOptions>>().Value.ValidationInterval);
    }
}
