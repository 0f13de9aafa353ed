using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Parts;

/// <summary>One event of the demonstration: when, what is told, what should follow, and the way in with what is already known.</summary>
/// <param name="At">Branch time.</param>
/// <param name="Title">In a line.</param>
/// <param name="Said">What the person on the phone says, or what is seen.</param>
/// <param name="Right">What the right response is, for whoever tries it out.</param>
/// <param name="Way">Address of the page to open.</param>
/// <param name="Fill">What the page is opened with.</param>
public sealed record DemoEvent(string At, string Title, string Said, string Right, string Way, ImmutableDictionary<string, string> Fill)
{
    /// <summary>Its number in the list; it stands in the address.</summary>
    public string Number { get; init; } = "";

    public LocalDateTime Moment => LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(At).Value;

    /// <summary>The page with the event named; facts about people never stand in an address.</summary>
    public string Href => $"{Way}{(Way.Contains('?', StringComparison.Ordinal) ? '&' : '?')}event={Number}";
}

/// <summary>The events of the demonstration week, in order; they come with the demonstration's files. Only the demonstration plays them.</summary>
public sealed class DemoEvents
{
    private static readonly JsonSerializerOptions Reading = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };
    private readonly Lazy<ImmutableArray<DemoEvent>> events = new(Read);

    public ImmutableArray<DemoEvent> All => events.Value;

    public DemoEvent? Find(string number) => All.FirstOrDefault(one => one.Number == number);

    /// <summary>The first event after a moment; empty when the week is over.</summary>
    public DemoEvent? After(LocalDateTime now) => All.FirstOrDefault(one => one.Moment > now);

    /// <summary>The event whose moment it is; empty when none is.</summary>
    public DemoEvent? At(LocalDateTime now) => All.LastOrDefault(one => one.Moment == now);

    private static ImmutableArray<DemoEvent> Read()
    {
        string file = Path.Combine(AppContext.BaseDirectory, "seed", "demo-events.json");
        if (!File.Exists(file))
            return [];
        ImmutableArray<DemoEvent> read = JsonSerializer.Deserialize<ImmutableArray<DemoEvent>>(File.ReadAllText(file), Reading);
        return [.. read.OrderBy(one => one.Moment).Select((one, i) => one with { Number = (i + 1).ToString(CultureInfo.InvariantCulture) })];
    }
}
