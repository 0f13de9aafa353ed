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
    public Task<double> PressAsync(string tag, string words, CancellationToken cancel) => SendAsync(Find(tag, "click", c => c.Text.Contains(words, StringComparison.Ordinal)), "click", "{\"type\":\"click\"}", null, cancel);

    /// <summary>Presses the thing whose handler was renewed, counted from 0, when nothing of it but the handler was drawn anew.</summary>
    public Task<double> PressRenewedAsync(int number, CancellationToken cancel)
    {
        ulong[] renewed;
        lock (_hands) renewed = [.. _controls.Where(c => c.Tag.Length == 0).Select(c => c.Handlers.GetValueOrDefault("click")).Where(h => h != 0)];
        return renewed.Length > number ? SendAsync(renewed[number], "click", "{\"type\":\"click\"}", null, cancel) : throw new InvalidOperationException("Nothing to press was renewed.");
    }

    /// <summary>Fills a field, or ticks the first box of what was drawn last when no id is given.</summary>
    public Task<double> TypeAsync(string id, string value, CancellationToken cancel) =>
        SendAsync(id.Length == 0 ? FirstDrawn("input", "change") : Find("input", "change", c => c.Id == id), "change", new JsonObject { ["value"] = value }.ToJsonString(), value, cancel);

    /// <summary>Sends the first form of the page.</summary>
    public Task<double> SubmitAsync(CancellationToken cancel) => SendAsync(Find("form", "submit", _ => true), "submit", "{\"type\":\"submit\"}", null, cancel);

    /// <summary>Calls the page as its script does.</summary>
    public async Task<double> TellPageAsync(string name, CancellationToken cancel, params JsonNode[] what)
    {
        int before = Volatile.Read(ref _batches);
        long start = Stopwatch.GetTimestamp();
        await _hub.SendAsync("BeginInvokeDotNetFromJS", NextCall(), null, name, Volatile.Read(ref _page), new JsonArray(what).ToJsonString(), cancel);
        return await StandsAsync(start, cancel, before);
    }

    /// <summary>Whether something of that kind says so and can be pressed.</summary>
    public bool Sees(string tag, string words)
    {
        lock (_hands) return _controls.Any(c => c.Tag == tag && c.Text.Contains(words, StringComparison.Ordinal));
    }

    private ulong Find(string tag, string what, Func<DrawnControl, bool> fits)
    {
        lock (_hands)
        {
            DrawnControl? last = _controls.LastOrDefault(c => c.Tag == tag && c.Handlers.ContainsKey(what) && fits(c));
            return last?.Handlers[what] ?? throw new InvalidOperationException($"There is no {tag} to {what}.");
        }
    }

    private ulong FirstDrawn(string tag, string what)
    {
        lock (_hands)
            return _controls.Skip(_drawnBefore).FirstOrDefault(c => c.Tag == tag && c.Handlers.ContainsKey(what))?.Handlers[what] ?? throw new InvalidOperationException($"No {tag} was drawn.");
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
        lock (_hands) _controls.Clear();
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
