using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>What the ledger says about the patient as a whole.</summary>
internal sealed class PatientStory(DateTimeZone zone)
{
    private ImmutableArray<LineEvent> _lastUnder = [];
    private LineEvent? _lastLabs;

    public LineEvent? Recertified { get; private set; }

    public LocalDate? InHospitalSince { get; private set; }

    /// <summary>The last admission that was written down; empty when a return has no admission before it.</summary>
    public LineEvent? Admitted { get; private set; }

    /// <summary>The return home that no assessment has followed yet.</summary>
    public LineEvent? BackHome { get; private set; }

    public void Take(LineEvent entry)
    {
        switch (entry.Kind)
        {
            case LineEventKind.AdmittedToHospital:
                if (InHospitalSince is null) Admitted = entry;
                InHospitalSince ??= DayOf(entry, zone);
                BackHome = null;
                break;
            case LineEventKind.ReturnedHome:
                if (InHospitalSince is null) Admitted = null;
                InHospitalSince = null;
                BackHome = entry;
                break;
            case LineEventKind.Recertified:
                Recertified = entry;
                BackHome = null;
                break;
            case LineEventKind.LabsDrawn or LineEventKind.DoseGiven or LineEventKind.ServiceGiven or LineEventKind.Removed
                when entry.Performed is not null:
                if (entry.Order is not null) TakeUnderOrder(entry);
                else if (entry.Kind == LineEventKind.LabsDrawn) _lastLabs = entry;
                break;
        }
    }

    /// <summary>The same story, to be told on without touching this one.</summary>
    public PatientStory Copy() => (PatientStory)MemberwiseClone();

    /// <summary>A patient has a handful of orders: walking them is quicker than looking one up.</summary>
    private void TakeUnderOrder(LineEvent entry)
    {
        for (var i = 0; i < _lastUnder.Length; i++)
        {
            if (_lastUnder[i].Order != entry.Order) continue;
            _lastUnder = _lastUnder.SetItem(i, entry);
            return;
        }

        _lastUnder = _lastUnder.Add(entry);
    }

    private LineEvent? LastNaming(string order)
    {
        foreach (var entry in _lastUnder)
            if (entry.Order == order) return entry;
        return null;
    }

    /// <summary>The last entry made under an order. A draw that names no order counts for routine labs that were
    /// ordered by then, never for a drug level.</summary>
    public LineEvent? LastUnder(CareOrder order)
    {
        var named = LastNaming(order.Id);
        if (order.Kind != OrderKind.Labs || _lastLabs is null || _lastLabs.Performed!.Value.Date < order.StartsOn) return named;
        return named is null || _lastLabs.Performed!.Value.Date > named.Performed!.Value.Date ? _lastLabs : named;
    }

    /// <summary>Whether what a caregiver did was theirs to do on that day; anybody else's care is not a question of validation.</summary>
    public static bool IsValidated(LineEvent entry, ImmutableArray<CaregiverValidation> validations, DateTimeZone zone)
    {
        if (entry.Performer != PerformerKind.Caregiver || ItemOf(entry.Kind) is not { } item) return true;
        var day = DayOf(entry, zone);
        return Owners.IsValidated(validations, item, entry.Line, day, entry.PerformerName)
            || (item == CareItem.LumenFlush && Owners.IsValidated(validations, CareItem.PortFlush, entry.Line, day, entry.PerformerName));
    }

    /// <summary>The day it was done, or the day it was entered when nobody knows.</summary>
    private static LocalDate DayOf(LineEvent entry, DateTimeZone zone) => entry.Performed?.Date ?? entry.RecordedAt.InZone(zone).Date;

    private static CareItem? ItemOf(LineEventKind kind) => kind switch
    {
        LineEventKind.DressingChanged => CareItem.Dressing,
        LineEventKind.ConnectorChanged => CareItem.Connector,
        LineEventKind.SetChanged => CareItem.Set,
        LineEventKind.PortAccessed => CareItem.PortNeedle,
        LineEventKind.Flushed => CareItem.LumenFlush,
        _ => null,
    };
}
