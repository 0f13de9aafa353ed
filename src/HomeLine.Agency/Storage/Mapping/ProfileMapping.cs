using HomeLine.Agency.Roster;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class ProfileMapping : IEntityTypeConfiguration<AgencyProfile>
{
    public void Configure(EntityTypeBuilder<AgencyProfile> builder)
    {
        builder.OnlyRow("profile").Changeable();
        builder.Ignore(p => p.Zone);
        builder.Property(p => p.CompactStates).AsJson();
    }
}
