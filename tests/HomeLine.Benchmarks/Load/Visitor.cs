using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.Connections;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.AspNetCore.SignalR.Protocol;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Benchmarks.Load;

/// <summary>
/// One signed-in person with an open page: opens the interactive connection as the page's script does, answers what a browser answers, and follows links.
/// It draws nothing, so that the machine's time is the server's.
/// </summary>
internal sealed partial class Visitor : IAsyncDisposable
{
    /// <summary>Nothing more came for so long: the page stands.</summary>
    private static readonly TimeSpan Silence = TimeSpan.FromMilliseconds(700);

    /// <summary>No page takes longer; then it counts as failed.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly HubConnection _hub;
    private readonly string _address;
    private readonly List<byte[]> _seen = [];
    private long _lastBatch;
    private int _batches;
    private int _objects;
    private string? _fault;

    private Visitor(string address, string cookie)
    {
        _address = address;
        var builder = new HubConnectionBuilder();
        builder.WithUrl($"{address}/_blazor", HttpTransportType.WebSockets, options => options.Headers["Cookie"] = cookie);
        builder.Services.AddSingleton<IHubProtocol, CircuitWire>();
        _hub = builder.Build();
        _hub.On<int, byte[]>("JS.RenderBatch", OnBatchAsync);
        _hub.On<long, string, string?, int, long, int>("JS.BeginInvokeJS", (task, name, told, _, _, _) =>
        {
            NoteObject(name, told);
            return AnswerAsync(task, name);
        });
        _hub.On<string>("JS.Error", fault => _fault = fault);
        _hub.On<string, bool, string>("JS.EndInvokeDotNet", (_, done, fault) => _fault ??= done ? null : fault);
        _hub.On<string>("JS.EndUpdateRootComponents", _ => { });
        _hub.On<int, string>("JS.AttachComponent", (_, _) => { });
    }

    /// <summary>Keeps what arrives, so that it can be asked what is on the page. Off while times are taken.</summary>
    public bool KeepsWhatItSees { get; set; }

    /// <summary>Keeps what can be pressed. Off for who only looks.</summary>
    public bool HasHands { get; set; }

    /// <summary>Whether a text came with the page followed last.</summary>
    public bool Saw(string text) => _seen.Any(batch => batch.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0);

    /// <summary>Fetches a page and brings it alive, and waits until it stands.</summary>
    /// <returns>Milliseconds of the page's own request, and until everything was on screen.</returns>
    public static async Task<(Visitor Visitor, double PageMs, double AliveMs)> OpenAsync(HttpClient http, string address, string cookie, string path, CancellationToken cancel)
    {
        long start = Stopwatch.GetTimestamp();
        using var request = new HttpRequestMessage(HttpMethod.Get, address + path);
        request.Headers.Add("Cookie", cookie);
        using HttpResponseMessage response = await http.SendAsync(request, cancel);
        string page = await response.EnsureSuccessStatusCode().Content.ReadAsStringAsync(cancel);
        double pageMs = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        var visitor = new Visitor(address, cookie);
        await visitor._hub.StartAsync(cancel);
        string state = StatePattern().Match(page).Groups[1].Value;
        string? circuit = await visitor._hub.InvokeAsync<string?>("StartCircuit", $"{address}/", address + path, "[]", state, cancel);
        if (circuit is null) throw new InvalidOperationException("The server opened no circuit.");
        await visitor._hub.SendAsync("UpdateRootComponents", Operations(page), state, cancel);
        double alive = await visitor.StandsAsync(start, cancel);
        return (visitor, pageMs, alive);
    }

    /// <summary>Follows a link within the program and waits until the page stands.</summary>
    /// <returns>Milliseconds until its last part was on screen.</returns>
    public async Task<double> FollowAsync(string path, CancellationToken cancel)
    {
        int before = Volatile.Read(ref _batches);
        _seen.Clear();
        ForgetControls();
        long start = Stopwatch.GetTimestamp();
        await _hub.SendAsync("OnLocationChanged", _address + path, null, true, cancel);
        return await StandsAsync(start, cancel, before);
    }

    public ValueTask DisposeAsync() => _hub.DisposeAsync();

    private async Task<double> StandsAsync(long start, CancellationToken cancel, int before = 0)
    {
        while (true)
        {
            await Task.Delay(20, cancel);
            if (_fault is { } fault) throw new InvalidOperationException(fault);
            long last = Volatile.Read(ref _lastBatch);
            if (Volatile.Read(ref _batches) > before && Stopwatch.GetElapsedTime(last) > Silence)
                return Stopwatch.GetElapsedTime(start, last).TotalMilliseconds;
            if (Stopwatch.GetElapsedTime(start) > Patience) throw new TimeoutException($"Nothing came for {Patience.TotalSeconds} s.");
        }
    }

    private async Task OnBatchAsync(int number, byte[] batch)
    {
        if (KeepsWhatItSees) _seen.Add(batch);
        if (HasHands) SeeControls(batch);
        Volatile.Write(ref _lastBatch, Stopwatch.GetTimestamp());
        Interlocked.Increment(ref _batches);
        await _hub.SendAsync("OnRenderCompleted", number, null);
    }

    /// <summary>A script that is called answers with nothing, one that is imported with a reference to itself.</summary>
    private Task AnswerAsync(long task, string name)
    {
        JsonNode? answer = name == "import" ? new JsonObject { ["__jsObjectId"] = Interlocked.Increment(ref _objects) } : null;
        return task == 0 ? Task.CompletedTask : _hub.SendAsync("EndInvokeJSFromDotNet", task, true, new JsonArray(task, true, answer).ToJsonString());
    }

    /// <summary>The parts of the page that live on the circuit, as the page marks them.</summary>
    private static string Operations(string page)
    {
        var operations = new JsonArray();
        foreach (Match marker in MarkerPattern().Matches(page))
        {
            JsonNode node = JsonNode.Parse(marker.Groups[1].Value)!;
            if (node["descriptor"] is null) continue;
            operations.Add(new JsonObject { ["type"] = "add", ["ssrComponentId"] = operations.Count + 1, ["marker"] = node.DeepClone() });
        }

        return new JsonObject { ["batchId"] = 1, ["operations"] = operations }.ToJsonString(JsonSerializerOptions.Web);
    }

    [GeneratedRegex("<!--Blazor:(\\{.*?\\})-->")]
    private static partial Regex MarkerPattern();

    [GeneratedRegex("<!--Blazor-Server-Component-State:(.*?)-->")]
    private static partial Regex StatePattern();
}
