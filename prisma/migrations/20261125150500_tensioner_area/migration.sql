-- A tensioner's hydraulic area, from its plate. Nothing stands for it where it was not given.
ALTER TABLE "tool" ADD COLUMN "hydraulic_area_mm2" DOUBLE PRECISION;
