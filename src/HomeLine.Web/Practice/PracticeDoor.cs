namespace HomeLine.Web.Practice;

/// <summary>Nothing that could be taken for the real thing leaves a practice copy: no sheet is handed out.</summary>
public static class PracticeDoor
{
    private const string Words = "This is a practice copy. No sheet or summary is handed out from it: print from the real agency.";

    /// <summary>Whether the program serves a practice copy.</summary>
    public static bool IsPractice(this IConfiguration settings) => settings.GetValue(PracticeCopy.Setting, false);

    /// <summary>Answers a request for a sheet with a sentence.</summary>
    public static Task NothingLeavesAsync(HttpContext http, RequestDelegate next)
    {
        if (!http.Request.Path.StartsWithSegments("/sheets") && !http.Request.Path.StartsWithSegments("/visits/summary")) return next(http);
        http.Response.StatusCode = StatusCodes.Status409Conflict;
        http.Response.ContentType = "text/plain; charset=utf-8";
        return http.Response.WriteAsync(Words);
    }
}
