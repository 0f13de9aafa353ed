using System.Collections.Immutable;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Scope;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>orders.csv: prescribers' orders.</summary>
internal static class OrdersTable
{
    public static readonly TableShape Shape = TableShape.Of("orders.csv", false,
        """
        order! patient! line kind! starts_on! ends_on practitioner text item every_days confirmed weekdays dates start_from start_to
        dose_times visits_per_week as_needed_visits as_needed_used skills setup_minutes work_minutes not_before needs_courier
        allergy_history reaction_kit_through infusing_minutes
        """.ReplaceLineEndings(" "));

    private const int LongestInterval = 365;
    private const int MostVisits = 100;
    private const int MostMinutes = 720;
    private static readonly ImmutableArray<string> AsNeededWords = ["prn", "as needed", "as-needed"];

    public static CareOrder Read(Row row)
    {
        string id = row.Id("order");
        if (id.Length > 0 && !row.Ties.Orders.Add(id)) row.Refuse("order", "There are two orders with this identifier.");
        PatientId patient = row.Patient();
        var order = new CareOrder
        {
            Id = id,
            Patient = patient,
            Line = row.LineOf(patient),
            Kind = row.Word<OrderKind>("kind"),
            StartsOn = row.RequiredDate("starts_on"),
            EndsOn = row.Date("ends_on"),
            Practitioner = row.Text("practitioner"),
            Text = row.Text("text"),
            Item = row.OptionalWord<CareItem>("item"),
            EveryDays = row.Whole("every_days", 1, LongestInterval),
            Confirmed = row.YesNo("confirmed"),
            Weekdays = row.Weekdays("weekdays"),
            Dates = row.Dates("dates"),
            StartFrom = row.Time("start_from"),
            StartTo = row.Time("start_to"),
            DoseTimes = row.Times("dose_times"),
            VisitsPerWeek = row.Whole("visits_per_week", 1, MostVisits),
            AsNeededVisits = AsNeeded(row),
            AsNeededUsed = row.Whole("as_needed_used", 0, MostVisits) ?? 0,
            Skills = row.List("skills"),
            SetupMinutes = row.Whole("setup_minutes", 0, MostMinutes),
            WorkMinutes = row.Whole("work_minutes", 0, MostMinutes),
            NotBefore = row.Trimmed("not_before") == NotKnown ? CareOrder.DeliveryNotKnown : row.DateTime("not_before"),
            NeedsCourier = row.YesNo("needs_courier"),
            FirstDose = FirstDose(row),
        };
        if (row.IsSound) CheckTogether(row, order);
        return order;
    }

    /// <summary>In place of a time: a delivery is awaited, and nobody knows yet when it comes.</summary>
    private const string NotKnown = "unknown";

    public static IEnumerable<string[]> Write(IEnumerable<CareOrder> orders) => orders.Select(order => new[]
    {
        order.Id, order.Patient.Value, order.Line?.Value ?? "", Words<OrderKind>.Of(order.Kind), TimeText.Write(order.StartsOn),
        TimeText.Write(order.EndsOn), order.Practitioner, order.Text, order.Item is { } item ? Words<CareItem>.Of(item) : "",
        NumberText.Write(order.EveryDays), order.Confirmed ? "yes" : "no", ListText.Write(order.Weekdays.Select(WeekdayWords.Of)),
        ListText.Write(order.Dates.Select(TimeText.Write)), TimeText.Write(order.StartFrom), TimeText.Write(order.StartTo),
        ListText.Write(order.DoseTimes.Select(TimeText.Write)), NumberText.Write(order.VisitsPerWeek),
        NumberText.Write(order.AsNeededVisits), NumberText.Write(order.AsNeededUsed), ListText.Write(order.Skills),
        NumberText.Write(order.SetupMinutes), NumberText.Write(order.WorkMinutes), order.AwaitsDelivery ? NotKnown : TimeText.Write(order.NotBefore),
        order.NeedsCourier ? "yes" : "no",
        order.FirstDose is { } dose ? dose.AllergyHistoryTaken ? "yes" : "no" : "", TimeText.Write(order.FirstDose?.KitGoodThrough), NumberText.Write(order.FirstDose?.InfusingMinutes),
    });

    /// <summary>A first dose is one whose running time is given.</summary>
    private static FirstDoseFacts? FirstDose(Row row)
    {
        if (row.Whole("infusing_minutes", 0, MostMinutes) is { } runs) return new FirstDoseFacts(row.YesNo("allergy_history"), row.Date("reaction_kit_through"), runs);
        foreach (string column in (string[])["allergy_history", "reaction_kit_through"])
            if (row.Has(column)) row.Refuse(column, "Of a first dose it is needed how long the drug runs: give infusing_minutes.");
        return null;
    }

    private static int? AsNeeded(Row row)
    {
        string text = row.Trimmed("as_needed_visits");
        if (text.Length == 0 || text.All(c => char.IsAsciiDigit(c) || c == '-')) return row.Whole("as_needed_visits", 0, MostVisits);
        row.Refuse("as_needed_visits", "As-needed visits need a number: an order without a limit cannot be used.");
        return null;
    }

    private static void CheckTogether(Row row, CareOrder order)
    {
        row.InOrder<LocalDate>("starts_on", order.StartsOn, "ends_on", order.EndsOn);
        row.InOrder("start_from", order.StartFrom, "start_to", order.StartTo);
        foreach (LocalDate date in order.Dates.Where(date => date < order.StartsOn || date > order.EndsOn))
            row.Refuse("dates", TimeText.Write(date), "This day lies outside the order's own dates.");
        if (order.AsNeededUsed > (order.AsNeededVisits ?? 0))
            row.Refuse("as_needed_used", order.AsNeededVisits is null
                ? "As-needed visits were used but as_needed_visits holds no limit."
                : "More as-needed visits are used than ordered.");
        if (order.AsNeededVisits is null && AsNeededWords.Any(word => order.Text.Contains(word, StringComparison.OrdinalIgnoreCase)))
            row.Refuse("as_needed_visits", "The order speaks of as-needed visits but has no limit; it cannot be used without one.");
        CheckKind(row, order);
    }

    private static void CheckKind(Row row, CareOrder order)
    {
        switch (order.Kind)
        {
            case OrderKind.Interval when order.Item is null || order.EveryDays is null:
                row.Refuse(order.Item is null ? "item" : "every_days", "An interval order needs the item and every how many days.");
                break;
            case OrderKind.VisitFrequency when order.VisitsPerWeek is null && order.EveryDays is null && order.AsNeededVisits is null:
                row.Refuse("visits_per_week", "A frequency order needs visits_per_week, every_days or as_needed_visits.");
                break;
            case OrderKind.DrugLevel when order.DoseTimes.IsEmpty:
                row.Refuse("dose_times", "A level cannot be planned without the dose times.");
                break;
            case OrderKind.Labs or OrderKind.DrugLevel or OrderKind.NurseDose or OrderKind.LongInfusion or OrderKind.Hydration
                or OrderKind.Teaching or OrderKind.Removal
                when order.EveryDays is null && order.Weekdays.IsEmpty && order.Dates.IsEmpty:
                row.Refuse("dates", "This order says no day: give every_days, weekdays or dates.");
                break;
        }
    }
}
