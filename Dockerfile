# Yardfall as one process that serves the API and the web client; the database stands beside it (docker-compose.yml).
FROM node:24-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
COPY apps/api/package.json apps/api/
COPY apps/cli/package.json apps/cli/
COPY apps/web/package.json apps/web/
COPY packages/calc/package.json packages/calc/
COPY packages/contracts/package.json packages/contracts/
COPY packages/drawing/package.json packages/drawing/
COPY packages/text/package.json packages/text/
RUN npm ci --no-audit --no-fund
COPY . .
RUN node tools/build.mjs

FROM node:24-bookworm-slim
WORKDIR /app
COPY --from=build --chown=node:node /app /app
RUN mkdir /data && chown node:node /data
USER node
ENV NODE_ENV=production HOST=0.0.0.0 PORT=3000 YARDFALL_DATA=/data
VOLUME /data
EXPOSE 3000
HEALTHCHECK --interval=10s --timeout=5s --start-period=30s CMD ["node", "-e", "fetch('http://127.0.0.1:'+process.env.PORT+'/ready').then(r=>process.exit(r.ok?0:1),()=>process.exit(1))"]
CMD ["node", "tools/start.mjs"]
