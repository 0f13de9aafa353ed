using System.Globalization;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Agency.Access;

/// <summary>The session: one shift at most, and over after a quarter of an hour without a sign of life (our own defaults).</summary>
public static class SignInCookie
{
    /// <summary>The whole session.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(12);

    /// <summary>Without a request; a page that stays open must ask for something now and then while its person is active.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromMinutes(15);

    private const string SignedInAt = "signed-in-at";

    /// <summary>Adds sign-in by cookie. Without https, which only development may do, the cookie cannot carry the <c>__Host-</c> promise.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="overHttps">Whether every request arrives over https.</param>
    /// <param name="signInPath">Where somebody who is not signed in is sent.</param>
    /// <param name="refusedPath">Where somebody without the right is sent.</param>
    /// <param name="cookieEnd">End of the cookie's name, where two programs on one machine must not share it.</param>
    public static AuthenticationBuilder AddHomeLineSignIn(
        this IServiceCollection services, bool overHttps, string signInPath = "/sign-in", string refusedPath = "/not-allowed", string cookieEnd = "")
    {
        services.AddAuthorization();
        AuthenticationBuilder sign = services.AddAuthentication(IdentityConstants.ApplicationScheme);
        sign.AddIdentityCookies();
        services.ConfigureApplicationCookie(options =>
        {
            options.Cookie.Name = (overHttps ? "__Host-homeline" : "homeline") + cookieEnd;
            options.Cookie.SecurePolicy = overHttps ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
            options.Cookie.HttpOnly = true;
            options.Cookie.SameSite = SameSiteMode.Lax;
            options.Cookie.Path = "/";
            options.ExpireTimeSpan = Idle;
            options.SlidingExpiration = true;
            options.LoginPath = signInPath;
            options.AccessDeniedPath = refusedPath;
            options.Events.OnSigningIn = RememberStart;
            options.Events.OnValidatePrincipal = ValidateAsync;
        });
        return sign;
    }

    private static Task RememberStart(CookieSigningInContext context)
    {
        context.Properties.IsPersistent = false;
        context.Properties.Items[SignedInAt] = Now(context.Options).ToString("O", CultureInfo.InvariantCulture);
        return Task.CompletedTask;
    }

    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        bool known = DateTimeOffset.TryParse(
            context.Properties.Items.TryGetValue(SignedInAt, out string? text) ? text : null,
            CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out DateTimeOffset start);
        if (!known || Now(context.Options) - start >= Longest)
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync(IdentityConstants.ApplicationScheme);
            return;
        }
        await SecurityStampValidator.ValidatePrincipalAsync(context);
    }

    private static DateTimeOffset Now(CookieAuthenticationOptions options) => (options.TimeProvider ?? TimeProvider.System).GetUtcNow();
}
