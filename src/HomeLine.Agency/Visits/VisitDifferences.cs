using System.Collections.Immutable;
using System.Globalization;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>What is other than last time, in words, so that nobody has to see it from a colour or to subtract. Pure.</summary>
internal static class VisitDifferences
{
    public static ImmutableArray<string> Of(VisitEntry entry, PatientCare care, Instant before)
    {
        var ledger = OrderedLedger.Read(care.Events, care.Zone, before).ToLookup(e => e.Line);
        return [.. entry.Lines.SelectMany(line => OfLine(line, [.. ledger[line.Line]], care.Lines.FirstOrDefault(l => l.Id == line.Line)))];
    }

    private static IEnumerable<string> OfLine(LineEntry line, LineEvent[] events, Line? known)
    {
        if (line.OutsideLengthCm() is { } now && (events.LastOrDefault(e => e.OutsideLengthCm is not null)?.OutsideLengthCm ?? known?.OutsideLengthCm) is { } then && now != then)
            yield return $"{line.Line}: {Cm(now)} outside, {Cm(Math.Abs(now - then))} {(now > then ? "longer" : "shorter")} than last time ({Cm(then)}).";
        if (line.ArmGirthCm is { } girth && events.LastOrDefault(e => e.ArmGirthCm is not null)?.ArmGirthCm is { } last && girth != last)
            yield return $"{line.Line}: arm {Cm(girth)}, {Cm(Math.Abs(girth - last))} {(girth > last ? "wider" : "narrower")} than last time ({Cm(last)}).";
        if (!line.Looked) yield break;
        string? earlier = events.LastOrDefault(e => e.Kind == LineEventKind.SiteChecked && e.Note.Length > 0)?.Note;
        bool foundThen = earlier?.StartsWith("Found:", StringComparison.Ordinal) == true;
        if (line.Found != SiteFinding.None && !foundThen)
            yield return $"{line.Line}: new today: {VisitWords.Of(line.Found)}.{(earlier is null ? " No words are kept from last time." : " Nothing was found last time.")}";
        else if (line.Found == SiteFinding.None && foundThen)
            yield return $"{line.Line}: nothing found today. Last time: {earlier}";
        else if (line.Found != SiteFinding.None && !earlier!.StartsWith($"Found: {VisitWords.Of(line.Found)}.", StringComparison.Ordinal))
            yield return $"{line.Line}: today {VisitWords.Of(line.Found)}. Last time: {earlier}";
    }

    private static string Cm(decimal value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.#} cm");
}
