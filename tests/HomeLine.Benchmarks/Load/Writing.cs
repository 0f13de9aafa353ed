using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Benchmarks.Load;

/// <summary>What people write while others look: a report up to its answers, a visit moved in the draft and taken back, a visit's form sent to be looked at.</summary>
internal sealed partial class Writing(PlannedWeek week, HttpClient http, string address, string cookie)
{
    /// <summary>"No" stands second among the answers to a question of the screen.</summary>
    private const int No = 1;

    private readonly WeekVisit[] _visits = [.. week.Visits.Where(v => v.Held is null && v.Second is null)];

    /// <summary>One of the three, with what each step took.</summary>
    public Task<List<(string What, double Ms)>> DoAsync(Visitor visitor, Random chance, CancellationToken cancel) => chance.Next(3) switch
    {
        0 => ReportAsync(visitor, chance, cancel),
        1 => MoveAsync(visitor, chance, cancel),
        _ => LookAtAVisitAsync(chance, cancel),
    };

    private WeekVisit Any(Random chance) => _visits[chance.Next(_visits.Length)];

    private async Task<List<(string, double)>> ReportAsync(Visitor visitor, Random chance, CancellationToken cancel)
    {
        await visitor.FollowAsync("/today", cancel);
        await visitor.FollowAsync($"/report?patient={Any(chance).Patient}", cancel);
        await visitor.TypeAsync("caller", "spouse", cancel);
        var took = new List<(string, double)> { ("report: its screen", await visitor.SubmitAsync(cancel)) };
        took.Add(("report: a question", await visitor.PressAsync("button", "No", cancel)));
        while (await visitor.PressRenewedAsync(No, "Look for answers", cancel) is { } ms) took.Add(("report: a question", ms));
        await visitor.TypeAsync("", "on", cancel);
        took.Add(("report: answers to it", await visitor.SubmitAsync(cancel)));
        return took;
    }

    private async Task<List<(string, double)>> MoveAsync(Visitor visitor, Random chance, CancellationToken cancel)
    {
        await visitor.FollowAsync("/today", cancel);
        var took = new List<(string, double)> { ("the week in work", await visitor.FollowAsync($"/week/{week.FirstDay.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}/work", cancel)) };
        took.Add(("a visit picked up", await visitor.TellPageAsync("DragAsync", cancel, JsonValue.Create(Any(chance).Id)!)));
        took.Add(("dropped elsewhere", await visitor.TellPageAsync("LetGoAsync", cancel, JsonValue.Create(0)!, JsonValue.Create("")!, JsonValue.Create("")!)));
        took.Add(("taken back", await visitor.PressAsync("button", "Undo", cancel)));
        return took;
    }

    /// <summary>The form of a visit and the answer to it: what the nurse would be asked before she signs. Nothing is signed.</summary>
    private async Task<List<(string, double)>> LookAtAVisitAsync(Random chance, CancellationToken cancel)
    {
        string path = $"{address}/visits/{Uri.EscapeDataString(Any(chance).Id)}/record";
        using var asked = new HttpRequestMessage(HttpMethod.Get, path);
        asked.Headers.Add("Cookie", cookie);
        long start = System.Diagnostics.Stopwatch.GetTimestamp();
        using HttpResponseMessage page = await http.SendAsync(asked, cancel);
        string html = await page.EnsureSuccessStatusCode().Content.ReadAsStringAsync(cancel);
        double form = System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        // The page has other forms with a token of their own.
        int begins = html.LastIndexOf("<form", html.IndexOf(" data-draft=", StringComparison.Ordinal), StringComparison.Ordinal);
        var fields = FieldPattern().Matches(html[begins..html.IndexOf("</form>", begins, StringComparison.Ordinal)]).Select(m => KeyValuePair.Create(WebUtility.HtmlDecode(m.Groups[1].Value), WebUtility.HtmlDecode(m.Groups[2].Value))).ToList();
        fields.AddRange([new("do", "check"), new("signs", "none"), new("arrived", "09:10"), new("left", "09:50")]);
        using var sent = new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(fields) };
        string[] more = page.Headers.TryGetValues("Set-Cookie", out IEnumerable<string>? set) ? [.. set.Select(c => c.Split(';')[0])] : [];
        sent.Headers.Add("Cookie", string.Join("; ", [cookie, .. more]));
        start = System.Diagnostics.Stopwatch.GetTimestamp();
        using HttpResponseMessage answer = await http.SendAsync(sent, cancel);
        string looked = await answer.EnsureSuccessStatusCode().Content.ReadAsStringAsync(cancel);
        if (!looked.Contains("data-answered=\"yes\"", StringComparison.Ordinal)) throw new InvalidOperationException("The form of a visit was not looked at.");
        return [("a visit's form", form), ("a visit looked at", System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMilliseconds)];
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"")]
    private static partial Regex FieldPattern();
}
