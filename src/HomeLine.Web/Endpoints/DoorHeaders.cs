namespace HomeLine.Web.Endpoints;

/// <summary>Headers on every answer, errors and downloads included.</summary>
public static class DoorHeaders
{
    private const int OneYear = 365 * 24 * 60 * 60;

    /// <param name="tileAddress">Where map pictures come from, when the agency has configured such a place; pictures from there are let in.</param>
    public static HeaderPolicyCollection Policy(string? tileAddress = null) => new HeaderPolicyCollection()
        .AddContentTypeOptionsNoSniff()
        .AddFrameOptionsDeny()
        .AddReferrerPolicySameOrigin()
        .AddStrictTransportSecurityMaxAgeIncludeSubDomains(OneYear)
        .AddCrossOriginOpenerPolicy(policy => policy.SameOrigin())
        .AddCrossOriginResourcePolicy(policy => policy.SameOrigin())
        .AddCustomHeader("Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()")
        .AddContentSecurityPolicy(policy =>
        {
            policy.AddDefaultSrc().Self();
            policy.AddScriptSrc().Self();
            policy.AddStyleSrc().Self();
            var pictures = policy.AddImgSrc().Self().Data();
            if (Uri.TryCreate(tileAddress, UriKind.Absolute, out Uri? tiles) && tiles.Scheme is "https" or "http") pictures.From(tiles.GetLeftPart(UriPartial.Authority));
            policy.AddConnectSrc().Self();
            policy.AddObjectSrc().None();
            // 'self' rather than 'none': the pages carry a base address.
            policy.AddBaseUri().Self();
            policy.AddFormAction().Self();
            policy.AddFrameAncestors().None();
        });

    /// <summary>A page of another site may not open a circuit or send a form here with the person's cookie.</summary>
    public static Task OwnOriginOnlyAsync(HttpContext http, RequestDelegate next)
    {
        string? origin = http.Request.Headers.Origin;
        bool isForeign = origin is { Length: > 0 } && origin != $"{http.Request.Scheme}://{http.Request.Host}";
        if (!isForeign || (HttpMethods.IsGet(http.Request.Method) && !http.WebSockets.IsWebSocketRequest && !http.Request.Path.StartsWithSegments("/_blazor")))
            return next(http);
        http.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }

    /// <summary>Nothing with care data stays in a browser's or a proxy's store. Static files carry their own rule.</summary>
    public static Task KeepNothingAsync(HttpContext http, RequestDelegate next)
    {
        http.Response.OnStarting(() =>
        {
            if (!IsStaticFile(http))
                http.Response.Headers.CacheControl = "no-store";
            return Task.CompletedTask;
        });
        return next(http);
    }

    private static bool IsStaticFile(HttpContext http) => http.Response.Headers.ETag.Count > 0 && HttpMethods.IsGet(http.Request.Method);
}
