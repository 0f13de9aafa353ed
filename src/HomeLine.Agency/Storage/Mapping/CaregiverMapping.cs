using HomeLine.LineCare;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class CaregiverMapping : IEntityTypeConfiguration<CaregiverValidation>
{
    public void Configure(EntityTypeBuilder<CaregiverValidation> builder)
    {
        builder.NumberedRows("caregivers").Changeable();
        builder.OfPatient(c => c.Patient);
        builder.OnLine(c => c.Line);
    }
}
