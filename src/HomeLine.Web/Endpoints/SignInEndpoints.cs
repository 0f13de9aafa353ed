using HomeLine.Agency.Access;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;

namespace HomeLine.Web.Endpoints;

/// <summary>Leaving, and staying while a page is in use.</summary>
public static class SignInEndpoints
{
    public static void MapSignIn(this WebApplication app)
    {
        app.MapPost("/sign-out", SignOutAsync);
        // The request itself renews the cookie; a page of another site cannot send this header.
        app.MapPost("/session/keep", ([FromHeader(Name = "X-HomeLine")] string? sign) =>
            sign == "keep" ? Results.NoContent() : Results.BadRequest());
    }

    private static async Task<IResult> SignOutAsync(HttpContext http, SignInManager<Account> door, [FromForm] string? reason)
    {
        await door.SignOutAsync();
        http.Response.Headers["Clear-Site-Data"] = "\"cache\"";
        return Results.LocalRedirect(reason == "idle" ? "/sign-in?idle=true" : "/sign-in?left=true");
    }
}
