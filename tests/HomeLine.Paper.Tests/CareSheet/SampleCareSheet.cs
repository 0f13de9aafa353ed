using HomeLine.Agency.Sheets;
using NodaTime;

namespace HomeLine.Paper.Tests;

/// <summary>Invented people of the demonstration: the sheet for the spouse of patient 3 after the lifting dressing of Tuesday.</summary>
internal static class SampleCareSheet
{
    public static CareSheetContent Typical { get; } = new()
    {
        AgencyName = "Brackenmoth Home Infusion",
        PatientName = "Clover Zigzagby",
        Number = 4,
        PrintedAt = new LocalDateTime(2027, 3, 9, 8, 5),
        Replaces = (3, new LocalDate(2027, 3, 3)),
        DayPhone = "555-0101",
        OnCallPhone = "555-0102",
        EmergencyNumber = "911",
        MainMessage = "Your nurse comes today, Tuesday, March 9, between 10:00 and 11:00 am. The visit on Wednesday is off.",
        Tasks =
        [
            new SheetTask("Change the dressing", "Nurse", false, "Tuesday, March 9"),
            new SheetTask("Change the two caps", "Nurse", false, "Tuesday, March 9"),
            new SheetTask("Take blood for the lab", "Nurse", false, "Tuesday, March 9"),
            new SheetTask("Hang the night bag", "You (spouse)", true, "Tuesday night, March 9"),
            new SheetTask("Flush the line", "You (spouse)", true, "Wednesday, March 10"),
            new SheetTask("Next dressing change", "Nurse", false, "by Tuesday, March 16"),
        ],
        NeverWait = StandingTexts.NeverWait,
        CallNow = StandingTexts.CallNow(38.0m),
        CallToday = StandingTexts.CallToday,
        LooksGood = StandingTexts.LooksGood,
        IsDemo = true,
    };

    /// <summary>The same with a line that must not be used and a material that must not touch the skin.</summary>
    public static CareSheetContent WithWarnings { get; } = Typical with
    {
        Locks = ["The line in the right arm. Wait for your nurse."],
        NotToUse = ["Skin wipes with chlorhexidine. They gave a rash."],
    };
}
