using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>Reads the ledger once, asks every clock, and puts the answer in order.</summary>
internal static class EveryClock
{
    public static CareAnswer Read(Reckoning reckoning)
    {
        var told = reckoning.Care.ToldBy(reckoning.Now);
        foreach (var story in told.Lines) AddLine(reckoning, story);
        AddPatient(reckoning, told.Patient, told.Lines);
        return Answer(reckoning, told.Patient);
    }

    private static void AddLine(Reckoning reckoning, LineStory story)
    {
        if (story.Line.Kind == LineKind.DialysisCatheter)
        {
            reckoning.Locks.Add(new LineLock(story.Line.Id, "Dialysis catheter: recorded, not for our use."));
            return;
        }

        if (story.Ended is not null)
        {
            SiteCheckClock.AddAfterRemoval(reckoning, story);
            return;
        }

        DressingClock.Add(reckoning, story);
        PortClock.Add(reckoning, story);
        ConnectorClock.Add(reckoning, story);
        SetClock.Add(reckoning, story);
        LumenFlushClock.Add(reckoning, story);
        SiteCheckClock.Add(reckoning, story);
        LocksAndLengths.Add(reckoning, story);
        LineWatch.Add(reckoning, story);
    }

    private static void AddPatient(Reckoning reckoning, PatientStory patient, LineStory[] lines)
    {
        foreach (var order in reckoning.Care.Orders)
        {
            if (order.EndsOn < reckoning.Today || order.StartsOn > reckoning.Horizon) continue;
            switch (order.Kind)
            {
                case OrderKind.Labs or OrderKind.DrugLevel:
                    var draw = patient.LastUnder(order);
                    LabsClock.Add(reckoning, order, draw?.Performed?.Date, draw);
                    break;
                case OrderKind.NurseDose or OrderKind.LongInfusion or OrderKind.Hydration or OrderKind.Teaching or OrderKind.Removal:
                    if (!IsOnEndedLine(order, lines)) ServiceClock.Add(reckoning, order, patient.LastUnder(order)?.Performed?.Date);
                    break;
                case OrderKind.VisitFrequency or OrderKind.Interval: break;
            }
        }

        RecertificationClock.Add(reckoning, patient.Recertified);
        ResumptionClock.BringForward(reckoning, patient);
        ValidationClock.Add(reckoning);
        OutsideCareClock.Apply(reckoning);
        if (reckoning.Care.BornOn is null)
            reckoning.Ask(null, DecisionCodes.BirthDateMissing, "", reckoning.Care.CareStartedOn,
                "The birth date is missing: age rules for materials and urgency are off.");
    }

    /// <summary>A service through a line that has come out is not due any more; a draw may still be, by another route.</summary>
    private static bool IsOnEndedLine(CareOrder order, LineStory[] lines)
    {
        foreach (var story in lines)
            if (order.Line == story.Line.Id && story.Ended is not null) return true;
        return false;
    }

    private static CareAnswer Answer(Reckoning reckoning, PatientStory patient)
    {
        var waived = RemovalWaiver.Apply(reckoning);
        reckoning.Windows.Sort(static (a, b) => Order(a, b));
        return new CareAnswer(
            reckoning.Care.Patient, reckoning.Now, HoldOf(reckoning, patient),
            [.. reckoning.Windows], [.. reckoning.Locks], [.. reckoning.Decisions])
        { Waived = waived };
    }

    private static int Order(DueWindow a, DueWindow b)
    {
        var order = a.LateFrom.CompareTo(b.LateFrom);
        if (order == 0) order = ((int)a.Item).CompareTo((int)b.Item);
        if (order == 0) order = string.CompareOrdinal(a.Line?.Value, b.Line?.Value);
        if (order == 0) order = string.CompareOrdinal(a.Lumen, b.Lumen);
        if (order == 0) order = string.CompareOrdinal(a.Order, b.Order);
        return order == 0 ? string.CompareOrdinal(a.Because.Sentence, b.Because.Sentence) : order;
    }

    private static Hold? HoldOf(Reckoning reckoning, PatientStory patient)
    {
        foreach (var hold in reckoning.Care.Holds)
            if (hold.From <= reckoning.Today && (hold.Through is not { } last || last >= reckoning.Today)) return hold;
        return patient.InHospitalSince is { } since ? new Hold(reckoning.Care.Patient, since, null, "In hospital") : null;
    }
}
