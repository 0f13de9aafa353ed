using System.Net;
using System.Threading.RateLimiting;
using HomeLine.Agency.Access;
using HomeLine.Agency.Today;
using HomeLine.Web.Endpoints;
using HomeLine.Web.Layout;
using HomeLine.Web.Notes;
using HomeLine.Web.Pages.FirstRun;
using HomeLine.Web.Pages.SignIn;
using HomeLine.Web.Pages.Visits;
using HomeLine.Web.Parts;
using HomeLine.Web.Practice;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.RateLimiting;

namespace HomeLine.Web;

/// <summary>What stands between the street and the office: limits, headers, who may come in.</summary>
public static class FrontDesk
{
    private const int MaxBodyBytes = 6 * 1024 * 1024;

    public static void AddFrontDesk(this WebApplicationBuilder builder)
    {
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MaxBodyBytes;
            kestrel.Limits.MaxConcurrentConnections = 500;
            kestrel.Limits.MaxConcurrentUpgradedConnections = 300;
        });
        // Also when run from source: the styles and the framework script are found beside the project, not only in a published folder.
        builder.WebHost.UseStaticWebAssets();
        IServiceCollection services = builder.Services;
        services.AddRazorComponents().AddInteractiveServerComponents(circuits => circuits.DetailedErrors = false);
        services.AddCascadingAuthenticationState();
        services.AddScoped<AuthenticationStateProvider, SignedInStill>();
        services.AddScoped<WhoIsAsking>();
        services.AddSingleton<DemoAgency>();
        services.AddSingleton<DemoEvents>();
        services.AddSingleton<DraftKeys>();
        services.AddSingleton<INoteMail, SmtpNotes>();
        services.AddSingleton<SendNotes>();
        services.AddHostedService<NoteRounds>();
        // Cookies are shared by every address of a machine: signing in to practise signs nobody out of the real agency.
        string practice = builder.Configuration.IsPractice() ? "-practice" : "";
        services.AddHomeLineSignIn(overHttps: builder.Configuration.GetValue("OverHttps", false), cookieEnd: practice);
        services.AddAuthorizationBuilder()
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
        services.AddAntiforgery(form =>
        {
            form.Cookie.Name = $"homeline-form{practice}";
            form.Cookie.SameSite = SameSiteMode.Strict;
            form.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddHealthChecks().AddCheck<DatabaseAnswers>("database", tags: ["ready"]);
        services.AddRateLimiter(LimitSignIn);
        builder.TrustNamedProxy();
    }

    public static void UseFrontDesk(this WebApplication app)
    {
        app.UseForwardedHeaders();
        app.UseSecurityHeaders(DoorHeaders.Policy(app.Configuration["Map:TileAddress"]));
        app.UseExceptionHandler("/broken", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.Use(DoorHeaders.OwnOriginOnlyAsync);
        app.Use(DoorHeaders.KeepNothingAsync);
        if (app.Configuration.IsPractice())
            app.Use(PracticeDoor.NothingLeavesAsync);
        app.UseRouting();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseAntiforgery();
    }

    public static void MapWorkingPages(this WebApplication app) =>
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(server =>
        {
            // Text of patients and text of outsiders may share a message; compressed together they could betray each other.
            server.DisableWebSocketCompression = true;
            server.ContentSecurityFrameAncestorsPolicy = "'none'";
        });

    // Guessing passwords is slowed per address as well as per account.
    private static void LimitSignIn(RateLimiterOptions limits)
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.AddPolicy(SignInLimit.Name, http => RateLimitPartition.GetFixedWindowLimiter(
            http.Connection.RemoteIpAddress ?? IPAddress.None,
            _ => new FixedWindowRateLimiterOptions { PermitLimit = SignInLimit.TriesAMinute, Window = TimeSpan.FromMinutes(1) }));
    }

    private static void TrustNamedProxy(this WebApplicationBuilder builder)
    {
        if (builder.Configuration["TrustedProxy"] is not { Length: > 0 } proxy)
            return;
        builder.Services.Configure<ForwardedHeadersOptions>(options =>
        {
            options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
            options.KnownProxies.Add(IPAddress.Parse(proxy));
        });
    }
}
