using HomeLine.Agency.WeekEditing;
using HomeLine.Web.Pages.WeekEditing;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.WeekEditing;

public sealed class InHandTests
{
    private static readonly LocalDate Tuesday = new(2027, 3, 9);

    internal static InHand Held => new("P58 Goosegrass Zestwick", new DraftStop(Arrangement.Visit() with { Day = Tuesday }, "Goosegrass Zestwick", "Skerrow Spit", false, 14, false, "", false, null, false), null,
    [
        Place(Tuesday, "N2", 3), Place(Tuesday, "N3", 2), Place(Tuesday.PlusDays(1), "N1", 4), Place(Tuesday.PlusDays(2), "N3", 1),
    ]);

    internal static WorkingPlace Place(LocalDate day, string nurse, int rank) =>
        new(nurse, "Nurse " + nurse, day, 0, rank == 1 ? "P51" : "", new LocalTime(9, rank), 60, rank, rank == 4 ? 10 : 0, 0, rank == 1 ? 0 : 1, rank);

    [Fact]
    public void The_first_step_down_is_the_best_place_and_the_last_leads_to_the_first()
    {
        Assert.Equal(3, Held.Step("ArrowDown"));
        Assert.Equal(0, (Held with { At = 3 }).Step("ArrowDown"));
        Assert.Equal(3, (Held with { At = 0 }).Step("ArrowUp"));
    }

    [Fact]
    public void Right_and_left_go_by_days_from_the_visits_own_day_to_the_best_place_there()
    {
        Assert.Equal(2, Held.Step("ArrowRight"));
        Assert.Equal(3, (Held with { At = 2 }).Step("ArrowRight"));
        Assert.Equal(1, (Held with { At = 2 }).Step("ArrowLeft"));
        Assert.Equal(1, (Held with { At = 3 }).Step("ArrowRight"));
    }

    [Fact]
    public void A_nurses_day_offers_its_best_place_or_none()
    {
        Assert.Equal(0, Held.BestOn("N2", Tuesday));
        Assert.Equal(-1, Held.BestOn("N2", Tuesday.PlusDays(2)));
    }

    [Fact]
    public void A_place_is_said_with_its_price()
    {
        WorkingPlace best = Held.Places[3], over = Held.Places[2];

        Assert.Equal("Thu 11 Mar, Nurse N3, after P51, 09:01", PlaceWords.Where(best));
        Assert.Equal("1 min more driving, no family to tell", PlaceWords.Price(best));
        Assert.Equal("4 min more driving, 10 min overtime, 1 family to tell", PlaceWords.Price(over));
        Assert.Equal("+4 min, over", PlaceWords.Sign(over));
    }
}
