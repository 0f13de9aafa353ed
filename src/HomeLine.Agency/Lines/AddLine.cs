using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Lines;

/// <summary>A line as somebody writes it down.</summary>
public sealed record LineToAdd
{
    public required PatientId Patient { get; init; }
    public required LineKind Kind { get; init; }

    /// <summary>How many lumens, 1 to <see cref="AddLine.MostLumens"/>; lettered from A.</summary>
    public required int Lumens { get; init; }

    /// <summary>Side and vein or site.</summary>
    public string Site { get; init; } = "";
    public LocalDate? InsertedOn { get; init; }
    public bool TipConfirmed { get; init; }
    public decimal? InsertedLengthCm { get; init; }
    public decimal? OutsideLengthCm { get; init; }
    public SecurementKind Securement { get; init; }

    /// <summary>What lies on the site since the insertion; empty when nobody knows.</summary>
    public DressingKind? Dressing { get; init; }
    public bool ExitSiteHealed { get; init; }

    /// <summary>The answer to what was asked.</summary>
    public string Answer { get; init; } = "";
}

/// <summary>A line that was added, and what follows from it.</summary>
public sealed record AddedLine(Line Line, ImmutableArray<string> Told);

/// <summary>Adds a line to a patient. Its clocks start with the insertion; without a date everything is due at the first contact.</summary>
public sealed class AddLine(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>More lumens than any line has: our own limit against a slip of the pen.</summary>
    public const int MostLumens = 4;

    /// <summary>Needs <see cref="AgencyAction.AddLine"/>. Refused when it cannot be, and until what is asked is answered.</summary>
    public Task<Outcome<AddedLine>> AddAsync(Actor actor, LineToAdd entry, CancellationToken cancel) =>
        AgencyWork.DoAsync<AddedLine>(databases, clock, actor, AgencyAction.AddLine, async (db, agency) =>
        {
            Patient? patient = agency.Roster.Patients.FirstOrDefault(p => p.Id == entry.Patient);
            if (patient is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
            if (entry.Lumens is < 1 or > MostLumens) return new Refusal(LineCodes.LumensUnclear, $"A line has 1 to {MostLumens} lumens.", "Correct the number.");
            Line line = Of(entry, agency);
            PatientCare care = agency.Files[patient.Id];
            ImmutableArray<LineEvent> events = entry.InsertedOn is { } on ? [Inserted(entry, line, on, actor, agency)] : [];
            ImmutableArray<RecordingReply> replies =
            [
                .. BeforeAddingLine.Replies(care, line, agency.Files.Policy, agency.Now),
                .. BeforeRecording.Replies(care with { Lines = care.Lines.Add(line) }, events, agency.Files.Policy, agency.Now),
            ];
            if (Replies.Refusal(replies, entry.Answer) is { } refused) return refused;
            db.Lines.Add(line);
            foreach (LineEvent one in events) db.LineEvents.Add(one);
            await AuditTrail.AppendAsync(db, actor, "add-line", $"{patient.Id} line {line.Id}", entry.Answer.Trim(), clock.RealNow(), cancel);
            return new AddedLine(line, [.. replies.Where(r => r.Weight == ReplyWeight.Tell).Select(r => r.Sentence)]);
        }, cancel);

    private static Line Of(LineToAdd entry, AgencyAtHand agency)
    {
        var taken = agency.Roster.Lines.Select(l => l.Id.Value).ToHashSet(StringComparer.Ordinal);
        int number = 1;
        while (taken.Contains(Name(entry.Patient, number))) number++;
        return new Line
        {
            Id = new LineId(Name(entry.Patient, number)),
            Patient = entry.Patient,
            Kind = entry.Kind,
            Lumens = [.. Enumerable.Range(0, entry.Lumens).Select(i => new Lumen(((char)('A' + i)).ToString()))],
            Site = entry.Site.Trim(),
            InsertedOn = entry.InsertedOn,
            TipConfirmed = entry.TipConfirmed || !entry.Kind.IsCentral(),
            InsertedLengthCm = entry.InsertedLengthCm,
            OutsideLengthCm = entry.OutsideLengthCm,
            Securement = entry.Kind == LineKind.Port ? SecurementKind.None : entry.Securement,
            ExitSiteHealed = entry.ExitSiteHealed,
        };
    }

    private static string Name(PatientId patient, int number) => string.Create(CultureInfo.InvariantCulture, $"{patient}-{number}");

    /// <summary>Placed elsewhere, as the paper says: the day alone is known.</summary>
    private static LineEvent Inserted(LineToAdd entry, Line line, LocalDate on, Actor actor, AgencyAtHand agency) => new()
    {
        Id = new EventId($"{line.Id}-inserted"),
        Patient = entry.Patient,
        Line = line.Id,
        Kind = LineEventKind.Inserted,
        Performed = CareMoment.SometimeOn(on),
        RecordedAt = agency.Now,
        Performer = PerformerKind.Outside,
        RecordedBy = actor.Name,
        Certainty = Certainty.DischargePaper,
        Dressing = entry.Kind == LineKind.Port ? null : entry.Dressing,
        OutsideLengthCm = entry.OutsideLengthCm,
    };
}
