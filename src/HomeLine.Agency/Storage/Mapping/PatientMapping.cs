using HomeLine.Agency.Roster;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class PatientMapping : IEntityTypeConfiguration<Patient>
{
    public void Configure(EntityTypeBuilder<Patient> builder)
    {
        builder.NumberedRows("patients").Changeable();
        builder.HasAlternateKey(p => p.Id);
        builder.Ignore(p => p.Zone);
        builder.ComplexProperty(p => p.Home);
        builder.Property(p => p.AccessTimes).AsJson();
        builder.Property(p => p.RequiredTraits).AsJson();
        builder.Property(p => p.ExcludedTraits).AsJson();
        builder.Property(p => p.RefusedNurses).AsJson();
        builder.Property(p => p.KnownNurses).AsJson();
        builder.Property(p => p.NeedsSkills).AsJson();
    }
}
