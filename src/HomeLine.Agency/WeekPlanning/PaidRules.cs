using System.Globalization;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>What of the way from home to the first door and from the last door home is paid; policy values, the agency's own choice.</summary>
/// <param name="HomeTime">Whether its minutes are paid (<c>paid.home</c>).</param>
/// <param name="FreeMinutes">Minutes of each of the two ways that stay unpaid (<c>paid.home.beyond</c>).</param>
/// <param name="HomeMiles">Whether its miles are paid (<c>mileage.home</c>).</param>
/// <param name="FreeMiles">Miles of each of the two ways that stay unpaid (<c>mileage.home.beyond</c>).</param>
public sealed record PaidRules(bool HomeTime, int FreeMinutes, bool HomeMiles, double FreeMiles)
{
    public static PaidRules Of(PolicyBook policy, LocalDate on) => new(
        policy.ValueOf("paid.home", on) > 0,
        (int)policy.ValueOf("paid.home.beyond", on),
        policy.ValueOf("mileage.home", on) > 0,
        (double)policy.ValueOf("mileage.home.beyond", on));

    /// <summary>Paid minutes of one way between home and a door.</summary>
    public int Paid(int minutes) => HomeTime ? Math.Max(0, minutes - FreeMinutes) : 0;

    /// <summary>Paid miles of one way between home and a door.</summary>
    public double Paid(double miles) => HomeMiles ? Math.Max(0, miles - FreeMiles) : 0;

    /// <summary>The rules in a sentence.</summary>
    public string Words =>
        $"Between home and the first and last door, time is {Part(HomeTime, FreeMinutes, "minutes")} and miles are {Part(HomeMiles, FreeMiles, "miles")}.";

    private static string Part(bool paid, double free, string unit) => !paid ? "not paid"
        : free > 0 ? string.Create(CultureInfo.InvariantCulture, $"paid beyond {free:0.#} {unit} each way")
        : "paid";
}
