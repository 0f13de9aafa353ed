using HomeLine.Agency.Access;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

/// <summary>The agency's roles exist from the first migration on.</summary>
internal sealed class RoleMapping : IEntityTypeConfiguration<IdentityRole>
{
    public void Configure(EntityTypeBuilder<IdentityRole> builder) =>
        builder.HasData(Enum.GetValues<AgencyRole>().Select(role => new IdentityRole
        {
            Id = role.ToString(),
            Name = role.ToString(),
            NormalizedName = role.ToString().ToUpperInvariant(),
            ConcurrencyStamp = "1",
        }));
}
