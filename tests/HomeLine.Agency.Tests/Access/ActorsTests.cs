using System.Security.Claims;
using HomeLine.Agency.Access;

namespace HomeLine.Agency.Tests.Access;

public sealed class ActorsTests
{
    [Fact]
    public void An_actor_is_made_of_what_the_session_says()
    {
        var identity = new ClaimsIdentity(
            [
                new Claim(ClaimTypes.NameIdentifier, "u1"), new Claim(ClaimTypes.Name, "n@example.test"),
                new Claim(ClaimTypes.Role, nameof(AgencyRole.Nurse)), new Claim(ClaimTypes.Role, "Made up"),
                new Claim(AccountClaims.DisplayName, "N. Urse"), new Claim(AccountClaims.NurseId, "N1"),
            ],
            "cookie");
        Actor actor = Actors.From(new ClaimsPrincipal(identity));
        Assert.Equal(("u1", "N. Urse", "N1"), (actor.UserId, actor.Name, actor.NurseId));
        Assert.Equal([AgencyRole.Nurse], actor.Roles);
    }

    [Fact]
    public void Nobody_is_not_an_actor() =>
        Assert.Throws<InvalidOperationException>(() => Actors.From(new ClaimsPrincipal(new ClaimsIdentity())));
}
