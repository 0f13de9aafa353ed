using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.SignalR.Client;

namespace HomeLine.Benchmarks.Load;

/// <summary>What hands do on a page: press, type, and call what the page's own script would call. Each returns milliseconds until everything it brought was on screen.</summary>
internal sealed partial class Visitor
{
    private readonly Lock _hands = new();
    private readonly List<DrawnControl> _controls = [];
    private long _drawing;
    private long _page;
    private int _calls;
    private int _drawnBefore;

    /// <summary>Presses the thing of that kind that says so.</summary>
    public async Task<double> PressAsync(string tag, string words, CancellationToken cancel) =>
        await SendAsync(await WaitForAsync(() => Last(tag, "click", c => c.Text.Contains(words, StringComparison.Ordinal)), $"{tag} {words}", cancel), "click", "{\"type\":\"click\"}", null, cancel);

    /// <summary>Presses the thing whose handler was renewed, counted from 0, when nothing of it but the handler was drawn anew; nothing once a form says those words.</summary>
    public async Task<double?> PressRenewedAsync(int number, string untilForm, CancellationToken cancel)
    {
        ulong handler = await WaitForAsync(() => Last("form", "submit", c => c.Text.Contains(untilForm, StringComparison.Ordinal)) is null ? Renewed(number) : 0, "renewed button", cancel);
        return handler == 0 ? null : await SendAsync(handler, "click", "{\"type\":\"click\"}", null, cancel);
    }

    /// <summary>Fills a field, or ticks the first box of what was drawn last when no id is given.</summary>
    public async Task<double> TypeAsync(string id, string value, CancellationToken cancel) => await SendAsync(
        await WaitForAsync(() => id.Length == 0 ? FirstDrawn("input", "change") : Last("input", "change", c => c.Id == id), $"field {id}", cancel),
        "change", new JsonObject { ["value"] = value }.ToJsonString(), value, cancel);

    /// <summary>Sends the last form of the page.</summary>
    public async Task<double> SubmitAsync(CancellationToken cancel) =>
        await SendAsync(await WaitForAsync(() => Last("form", "submit", _ => true), "form", cancel), "submit", "{\"type\":\"submit\"}", null, cancel);

    /// <summary>Calls the page as its script does.</summary>
    public async Task<double> TellPageAsync(string name, CancellationToken cancel, params JsonNode[] what)
    {
        await WaitForAsync(() => Volatile.Read(ref _page) is var page and not 0 ? (ulong)page : null, "page that listens", cancel);
        int before = Volatile.Read(ref _batches);
        long start = Stopwatch.GetTimestamp();
        await _hub.SendAsync("BeginInvokeDotNetFromJS", NextCall(), null, name, Volatile.Read(ref _page), new JsonArray(what).ToJsonString(), cancel);
        return await StandsAsync(start, cancel, before);
    }

    /// <summary>On a busy server a thing comes late: a hand waits for it, and that is no part of what is timed.</summary>
    private static async Task<ulong> WaitForAsync(Func<ulong?> there, string what, CancellationToken cancel)
    {
        long start = Stopwatch.GetTimestamp();
        while (true)
        {
            if (there() is { } found) return found;
            if (Stopwatch.GetElapsedTime(start) > Patience) throw new InvalidOperationException($"There was no {what}.");
            await Task.Delay(20, cancel);
        }
    }

    private ulong? Last(string tag, string what, Func<DrawnControl, bool> fits)
    {
        lock (_hands) return _controls.LastOrDefault(c => c.Tag == tag && c.Handlers.ContainsKey(what) && fits(c))?.Handlers[what];
    }

    private ulong? FirstDrawn(string tag, string what)
    {
        lock (_hands) return _controls.Skip(_drawnBefore).FirstOrDefault(c => c.Tag == tag && c.Handlers.ContainsKey(what))?.Handlers[what];
    }

    private ulong? Renewed(int number)
    {
        lock (_hands) return _controls.Where(c => c.Tag.Length == 0 && c.Handlers.ContainsKey("click")).Skip(number).FirstOrDefault()?.Handlers["click"];
    }

    private async Task<double> SendAsync(ulong handler, string what, string told, string? value, CancellationToken cancel)
    {
        lock (_hands)
        {
            _controls.RemoveAll(c => c.Tag.Length == 0);
            _drawnBefore = _controls.Count;
        }

        int before = Volatile.Read(ref _batches);
        long start = Stopwatch.GetTimestamp();
        var described = new JsonObject
        {
            ["eventHandlerId"] = handler,
            ["eventName"] = what,
            ["eventFieldInfo"] = value is null ? null : new JsonObject { ["componentId"] = 0, ["fieldValue"] = value },
        };
        await _hub.SendAsync("BeginInvokeDotNetFromJS", NextCall(), null, "DispatchEventAsync", Volatile.Read(ref _drawing), $"[{described.ToJsonString(JsonSerializerOptions.Web)},{told}]", cancel);
        return await StandsAsync(start, cancel, before);
    }

    private string NextCall() => Interlocked.Increment(ref _calls).ToString(System.Globalization.CultureInfo.InvariantCulture);

    private void SeeControls(byte[] batch)
    {
        List<DrawnControl> drawn = DrawnBatch.ControlsOf(batch);
        lock (_hands) _controls.AddRange(drawn);
    }

    private void ForgetControls()
    {
        lock (_hands)
        {
            _controls.Clear();
            _drawnBefore = 0;
        }

        Volatile.Write(ref _page, 0);
    }

    /// <summary>The page's own object and that of its drawing are handed to scripts by number.</summary>
    private void NoteObject(string name, string? told)
    {
        if (told is null || ObjectPattern().Match(told) is not { Success: true } found) return;
        long number = long.Parse(found.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        if (name.EndsWith("attachWebRendererInterop", StringComparison.Ordinal)) Volatile.Write(ref _drawing, number);
        else if (name == "watch") Volatile.Write(ref _page, number);
    }

    [GeneratedRegex("\"__dotNetObject\":(\\d+)")]
    private static partial Regex ObjectPattern();
}
